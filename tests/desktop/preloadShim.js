;(() => {
  const hearers = new Map()
  globalThis.standInTell = (channel, told) => {
    for (const hear of hearers.get(channel) ?? []) hear({}, told)
  }
  const electron = {
    contextBridge: {
      exposeInMainWorld: (name, value) => Object.defineProperty(globalThis, name, { value, writable: false }),
    },
    ipcRenderer: {
      invoke: (channel, ...given) => globalThis.standInInvoke(channel, given),
      on: (channel, hear) => hearers.set(channel, [...(hearers.get(channel) ?? []), hear]),
    },
  }
  globalThis.standInRequire = name => {
    if (name !== 'electron') throw new Error(`a sandboxed preload has no ${name}`)
    return electron
  }
})()
