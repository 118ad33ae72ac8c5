import type { MidiLibrary } from './midiLibrary'

/**
 * Tells when an input or output does not open because another program has it. The library opens each
 * one that is plugged in later, and leaves the promise of it to nobody: a refusal would be an unhandled
 * rejection, and no event tells of it. So the ports themselves are made to answer a refusal by staying
 * closed.
 */
export const watchRefusals = (library: MidiLibrary, tell: () => void): void => {
  library.addListener('midiaccessgranted', () => {
    const access = library.interface
    for (const port of [...access.inputs.values(), ...access.outputs.values()]) soften(port, tell)
    // Before the library hears of it, which listens from the next line of its own on.
    access.addEventListener('statechange', ({ port }) => {
      if (port) soften(port, tell)
    })
  })
}

interface Port {
  readonly open: () => Promise<unknown>
}

const softened = new WeakSet<Port>()

const soften = (port: Port, tell: () => void): void => {
  if (softened.has(port)) return
  softened.add(port)
  const open = port.open.bind(port)
  const openOrStay = async (): Promise<unknown> => {
    try {
      return await open()
    } catch {
      tell()
      return port
    }
  }
  Object.defineProperty(port, 'open', { value: openOrStay, configurable: true })
}
