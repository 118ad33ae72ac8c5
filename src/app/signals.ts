import type { Command } from '@/coach/coach'
import type { KeyEvent } from '@/music/keyEvent'
import type { Ms } from '@/music/units'
import type { Hands } from './hands'
import type { Stop } from './ports'
import type { Signal, SoundPort } from './soundPorts'

/** Short sounds that tell what the coach has decided, for eyes that rest on the hands. Never over the playing. */
export interface Signals {
  /** Sounds as soon as the hands rest; a key that comes before takes it back, since it is on the page too. */
  readonly ask: (signal: Signal, at: Ms) => void
  readonly hear: (event: KeyEvent) => void
  readonly pass: (at: Ms) => void
  readonly hush: () => void
}

/** All keys up for so long: the phrase is over, not a rest inside it or a change of hands. */
const restMs = 350
/** Later than this it would tell of something long past. */
const staleMs = 5_000

export const createSignals = (sound: Pick<SoundPort, 'signal'>, hands: Hands): Signals => {
  let waiting: { readonly signal: Signal; readonly since: Ms } | undefined
  let stop: Stop = () => {}

  const hush = (): void => {
    waiting = undefined
    stop()
    stop = () => {}
  }
  return {
    hush,
    ask: (signal, at) => {
      waiting = { signal, since: at }
    },
    hear: (event) => {
      if (event.kind === 'down') hush()
    },
    pass: (at) => {
      if (!waiting) return
      const { signal, since } = waiting
      if (at > since + staleMs) return hush()
      if (!hands.haveRested(at, restMs)) return
      waiting = undefined
      stop = sound.signal(signal)
    },
  }
}

/** What is worth a sound; the rest is told by sight alone. */
export const signalOf = (command: Command): Signal | undefined => {
  switch (command.kind) {
    case 'streakMet':
      return 'streak'
    case 'secure':
      return 'done'
    case 'tempo':
      switch (command.reason.kind) {
        case 'streak':
        case 'trialUp':
          return 'up'
        case 'tooFast':
        case 'trialDown':
        case 'remedied':
          return 'down'
        case 'person':
        case 'trialEnded':
        case 'trialLeft':
          return undefined
      }
    case 'problem':
    case 'smallerGroup':
      return 'problem'
    case 'pause':
    case 'rest':
    case 'elsewhere':
    case 'advice':
    case 'trialEnded':
    case 'problemOutcome':
    case 'overruled':
      return undefined
  }
}
