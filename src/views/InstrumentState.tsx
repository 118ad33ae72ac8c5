import type { MidiState } from '@/app/ports'
import { isBlackKey } from '@/music/pitch'
import type { Key } from '@/music/units'
import { devicesText } from '@/text/devices'
import { useApp, useSelected } from './context'
import { Sheet } from './Sheet'

/** Which keyboard is heard, or why none is, and what to do. */
export const InstrumentState = () => {
  const { short, advice, heard = false } = useInstrument()
  return (
    <Told short={short} connected={heard}>
      {advice}
    </Told>
  )
}

/** The same in words; where none is heard, with what plays meanwhile. */
export const useInstrument = (): Description => {
  const app = useApp()
  const midi = useSelected(app.instrument.store, (state) => state.midi)
  const input = useSelected(app.settings, (settings) => settings.input)
  const state = describe(midi, input)
  return state.advice === undefined || state.heard
    ? state
    : { ...state, advice: `${state.advice} ${otherWays(app.letters())}` }
}

interface Description {
  readonly short: string
  /** What to do; absent where nothing is wrong. */
  readonly advice?: string
  readonly heard?: boolean
}

const describe = (midi: MidiState, chosen: string): Description => {
  switch (midi.kind) {
    case 'asking':
      return { short: devicesText.looking }
    case 'unsupported':
      return devicesText.unsupported
    case 'denied':
      return devicesText.denied
    case 'failed':
      return { short: devicesText.failed.short, advice: devicesText.failed.advice(midi.detail) }
    case 'ready':
      return describeInputs(midi, chosen)
  }
}

const describeInputs = (
  { inputs }: Extract<MidiState, { kind: 'ready' }>,
  chosen: string,
): Description => {
  const wanted = inputs.filter(({ id }) => chosen === 'all' || chosen === id)
  const names = (standing: 'there' | 'taken'): string =>
    wanted.flatMap((each) => (each.standing === standing ? [each.name] : [])).join(', ')
  const [heard, taken] = [names('there'), names('taken')]
  if (heard !== '' && taken !== '')
    return {
      short: devicesText.alsoTaken(heard, taken),
      advice: devicesText.taken.advice(taken),
      heard: true,
    }
  if (heard !== '') return { short: heard, heard: true }
  if (taken !== '')
    return { short: devicesText.taken.short, advice: devicesText.taken.advice(taken) }
  const others = inputs.some(({ standing }) => standing === 'there')
  return chosen !== 'all' && others ? devicesText.unplugged : devicesText.none
}

/** How to play meanwhile: the first letters of the white keys as they are printed here. */
const otherWays = (letters: ReadonlyMap<Key, string>): string => {
  const white = [...letters].filter(([key]) => !isBlackKey(key)).toSorted(([a], [b]) => a - b)
  return devicesText.otherWays(
    white
      .slice(0, 4)
      .map(([, letter]) => letter)
      .join(' '),
  )
}

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
