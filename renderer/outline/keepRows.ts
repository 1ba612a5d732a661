import type { OutlineItem, OutlineSection } from './outlineOf'

const isSameItem = (a: OutlineItem, b: OutlineItem): boolean =>
  a.id === b.id && a.name === b.name && a.detail === b.detail

/**
 * The new sections, with every section and row that reads as before being the very object of before; `before` itself
 * when nothing reads otherwise. A list draws again only the rows that are other objects.
 */
export function keepRows(before: readonly OutlineSection[], now: readonly OutlineSection[]): readonly OutlineSection[] {
  const sections = new Map(before.map(section => [section.id, section]))
  const rows = new Map(before.flatMap(({ items }) => items.map(item => [item.id, item])))
  const kept = now.map(section => {
    const items = section.items.map(item => {
      const old = rows.get(item.id)
      return old && isSameItem(old, item) ? old : item
    })
    const old = sections.get(section.id)
    const isSame =
      old?.name === section.name && old.items.length === items.length && items.every((item, i) => item === old.items[i])
    return isSame ? old : { ...section, items }
  })
  return kept.length === before.length && kept.every((section, i) => section === before[i]) ? before : kept
}
