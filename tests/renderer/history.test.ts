import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { currentDocument, redoName, undoName } from '../../renderer/store/history'
import { createSiteStore, shownDocument } from '../../renderer/store/siteStore'
import { lPatio } from '../../samples/sites/lPatio'

const opened = () => {
  const store = createSiteStore()
  const site = lPatio()
  store.open(site)
  return { store, site }
}

const committed = (store: ReturnType<typeof createSiteStore>) => currentDocument(store.getState().history!)

describe('undo', () => {
  it('gives back the very same document, not a copy', () => {
    const { store, site } = opened()
    store.edit('name', draft => {
      draft.name = 'Other'
    })
    expect(committed(store).name).toBe('Other')
    store.undo()
    expect(committed(store)).toBe(site)
  })

  it('does not take back the name that the first file gave', () => {
    const { store, site } = opened()
    store.edit('units', draft => {
      draft.units = 'metric'
    })
    store.edit('name', draft => {
      draft.name = 'Typed'
    })
    store.undo()
    store.rename(site.name, 'Fern Lane')
    expect(committed(store)).toMatchObject({ name: 'Fern Lane', units: 'metric' })
    store.undo()
    expect(committed(store)).toEqual({ ...site, name: 'Fern Lane' })
    store.redo()
    store.redo()
    expect(committed(store).name).toBe('Typed')
  })

  it('names what it takes back and what redo does again', () => {
    const { store } = opened()
    store.edit('name', draft => {
      draft.name = 'A'
    })
    store.edit('units', draft => {
      draft.units = 'metric'
    })
    expect(undoName(store.getState().history!)).toBe('units')
    store.undo()
    expect(undoName(store.getState().history!)).toBe('name')
    expect(redoName(store.getState().history!)).toBe('units')
  })

  it('and redo walk any sequence of edits to its first and last document', () => {
    fc.assert(
      fc.property(fc.array(fc.string(), { minLength: 1, maxLength: 30 }), names => {
        const { store, site } = opened()
        for (const name of names)
          store.edit('name', draft => {
            draft.name = name
          })
        const last = committed(store)
        for (let i = 0; i < names.length + 3; i++) store.undo()
        expect(committed(store)).toBe(site)
        for (let i = 0; i < names.length + 3; i++) store.redo()
        expect(committed(store)).toBe(last)
      }),
      { seed: 7, numRuns: 60 },
    )
  })

  it('gives up what was undone only when something new is done', () => {
    const { store } = opened()
    store.edit('units', draft => {
      draft.units = 'metric'
    })
    store.undo()
    store.show(site => ({ ...site, name: 'Half' }))
    store.drop()
    expect(redoName(store.getState().history!)).toBe('units')
    store.edit('name', draft => {
      draft.name = 'New'
    })
    expect(redoName(store.getState().history!)).toBeUndefined()
  })
})

describe('a gesture', () => {
  it('is drawn from a preview and leaves the committed document alone', () => {
    const { store, site } = opened()
    store.show(each => ({ ...each, name: 'Half' }))
    expect(shownDocument(store.getState())?.name).toBe('Half')
    expect(committed(store)).toBe(site)
    store.drop()
    expect(shownDocument(store.getState())).toBe(site)
  })

  it('starts from the committed document at every move', () => {
    const { store } = opened()
    const lengthen = (by: string) => store.show(site => ({ ...site, name: site.name + by }))
    lengthen('1')
    lengthen('2')
    expect(shownDocument(store.getState())?.name).toBe('Alder Court patio2')
  })

  it('becomes one step when it is kept', () => {
    const { store } = opened()
    store.show(site => ({ ...site, name: 'a' }))
    store.show(site => ({ ...site, name: 'ab' }))
    store.keep('name')
    expect(store.getState().history?.steps).toHaveLength(2)
    expect(committed(store).name).toBe('ab')
    expect(store.getState().preview).toBeNull()
  })

  it('that changed nothing is no step', () => {
    const { store } = opened()
    const { rev } = store.getState()
    store.show(site => site)
    store.keep('nothing')
    expect(store.getState().history?.steps).toHaveLength(1)
    expect(store.getState().rev).toBe(rev)
  })
})
