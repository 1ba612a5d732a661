/** The page without the program around it. */
export function StandAlone() {
  return (
    <main className="stand-alone">
      <h1>Slabwright</h1>
      <p>
        This page needs the program it belongs to. Start it, and open the address it prints on this machine: the address
        ends with a key, and a page without the key is turned away.
      </p>
    </main>
  )
}
