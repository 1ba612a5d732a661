import { contextBridge, ipcRenderer } from 'electron'
import { callChannel, eventChannel, hostMethodNames } from '../../shared/host'

/** What came before the page listened; later it is passed on at once. */
const waiting: unknown[] = []
let hear: ((event: unknown) => void) | null = null

ipcRenderer.on(eventChannel, (_event, told: unknown) => {
  if (hear === null) waiting.push(told)
  else hear(told)
})

// One function for each method: the page can send nothing else, nor on any other channel.
contextBridge.exposeInMainWorld('slabwright', {
  calls: Object.fromEntries(
    hostMethodNames.map(name => [name, (input: unknown) => ipcRenderer.invoke(callChannel(name), input)]),
  ),
  listen(given: (event: unknown) => void) {
    hear = given
    for (const told of waiting.splice(0)) given(told)
    return () => {
      if (hear === given) hear = null
    }
  },
})
