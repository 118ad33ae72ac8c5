import { useApp, useSelected } from './context'
import { Sheet } from './Sheet'

/** Which keyboard is heard, or why none is, and what to do. */
export const InstrumentState = () => {
  const app = useApp()
  const midi = useSelected(app.instrument.store, (state) => state.midi)
  const input = useSelected(app.settings, (settings) => settings.input)
  switch (midi.kind) {
    case 'asking':
      return <Told short="Looking for a keyboard …" />
    case 'unsupported':
      return (
        <Told short="No MIDI in this browser">
          This browser has no Web MIDI. Chrome, Edge, Opera and Firefox on a computer have it,
          Chrome on Android too. {otherWays}
        </Told>
      )
    case 'denied':
      return (
        <Told short="MIDI not allowed">
          The browser was told not to let this page hear MIDI. Allow it in the site settings (the
          sign beside the address) and load the page again. {otherWays}
        </Told>
      )
    case 'failed':
      return (
        <Told short="MIDI failed">
          The keyboard could not be opened: {midi.message} Close other programs that use it, plug it
          in again. {otherWays}
        </Told>
      )
    case 'ready': {
      const there = midi.inputs.filter((each) => each.connected)
      const chosen = there.filter((each) => input === 'all' || each.id === input)
      if (chosen.length > 0)
        return <Told short={chosen.map((each) => each.name).join(', ')} connected />
      return input !== 'all' && there.length > 0 ? (
        <Told short="Keyboard unplugged">
          The chosen keyboard is not there. Plug it in, or choose another under Options. {otherWays}
        </Told>
      ) : (
        <Told short="No keyboard">
          Switch the keyboard on and connect it by USB; it is found by itself. {otherWays}
        </Told>
      )
    }
  }
}

const otherWays =
  'Until then the keys on screen play, and the computer’s keys: A S D F … are the white ones, W E T Y U … the black.'

const Told = ({
  short,
  connected = false,
  children,
}: {
  readonly short: string
  readonly connected?: boolean
  readonly children?: React.ReactNode
}) =>
  children ? (
    <Sheet
      className="instrument"
      word={
        <>
          <Plug connected={connected} /> {short}
        </>
      }
    >
      <p>{children}</p>
    </Sheet>
  ) : (
    <p className="instrument">
      <Plug connected={connected} /> {short}
    </p>
  )

/** A plug that is in, or out. */
const Plug = ({ connected }: { readonly connected: boolean }) => (
  <svg className="plug" viewBox="0 0 20 12" aria-hidden="true">
    <path d={connected ? 'M0 6h6M14 6h6' : 'M0 6h4M16 6h4'} />
    <rect x={connected ? 5.5 : 3} y="2" width="4.5" height="8" rx="1" />
    <rect x={connected ? 10 : 12.5} y="2" width="4.5" height="8" rx="1" className="socket" />
  </svg>
)
