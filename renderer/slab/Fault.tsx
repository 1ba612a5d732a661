/** What is wrong with what was entered, told aloud; nothing where `words` is null or empty. */
export function Fault({ words, id }: { readonly words: string | null; readonly id?: string }) {
  return words ? (
    <p className="entry-fault" id={id} role="alert">
      {words}
    </p>
  ) : null
}
