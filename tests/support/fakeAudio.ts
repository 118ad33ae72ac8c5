/** What was started on the fake audio clock: when, how fast, and when it was told to stop. */
export interface StartedSource {
  readonly at: number
  readonly rate: number
  stopAt: number
  /** What comes of it at the loudspeaker: all gains on its way, as they stand now. */
  readonly loudness: () => number
  readonly end: () => void
}

export interface FakeAudio {
  readonly started: StartedSource[]
  readonly opened: () => number
  /** Moves the audio clock; sources whose stop has come end. */
  readonly move: (bySeconds: number) => void
}

/**
 * An AudioContext without sound for what stands above it: when is what started. `blocked`: it never
 * starts running, as without a gesture of the person. `heardAt`: what the browser says of when sound
 * of an audio time is heard on the page's clock, which otherwise runs 1000 ms ahead.
 */
export const installFakeAudio = (
  stub: (name: string, value: unknown) => void,
  {
    blocked = false,
    heardAt = (audio) => audio * 1000 + 1000,
  }: { readonly blocked?: boolean; readonly heardAt?: (audioSeconds: number) => number } = {},
): FakeAudio => {
  const started: StartedSource[] = []
  /** Those that were told to stop. */
  const stopping = new Set<StartedSource>()
  let count = 0
  let now = 1
  const parameter = (value: number) => {
    const self = {
      value,
      setValueAtTime: () => {},
      // A glide of some milliseconds is over at once.
      setTargetAtTime: (target: number) => {
        self.value = target
      },
      cancelScheduledValues: () => {},
    }
    return self
  }
  interface Node {
    readonly gain: { readonly value: number }
    to?: Node
  }
  const node = () => {
    const self = {
      gain: parameter(1),
      connect: <T extends Node>(to: T): T => {
        Object.assign(self, { to })
        return to
      },
      disconnect: () => {},
    }
    return self
  }
  const loudnessOf = ({ gain, to }: Node): number => gain.value * (to ? loudnessOf(to) : 1)
  const source = () => {
    const self = Object.assign(node(), {
      buffer: null,
      playbackRate: parameter(1),
      onended: undefined as (() => void) | undefined,
      start: (at: number) => {
        const end = (): void => self.onended?.()
        const loudness = (): number => loudnessOf(self)
        record = { at, rate: self.playbackRate.value, stopAt: Infinity, loudness, end }
        started.push(record)
      },
      stop: (at = now) => {
        if (!record) return
        record.stopAt = Math.min(record.stopAt, at)
        stopping.add(record)
      },
    })
    let record: StartedSource | undefined
    return self
  }
  const buffer = (channels: number, length: number, sampleRate: number) => ({
    numberOfChannels: channels,
    length,
    sampleRate,
    getChannelData: () => new Float32Array(length).fill(0.5),
    copyToChannel: () => {},
  })
  class FakeContext {
    state = 'suspended'
    readonly sampleRate = 48_000
    readonly destination = node()
    onstatechange: (() => void) | undefined
    constructor() {
      count++
    }
    get currentTime(): number {
      return now
    }
    getOutputTimestamp = () => ({ contextTime: now, performanceTime: heardAt(now) })
    createGain = node
    createBufferSource = source
    createBuffer = buffer
    decodeAudioData = async () => buffer(2, 48_000, 48_000)
    resume = (): Promise<void> => {
      if (blocked) return new Promise(() => {})
      this.state = 'running'
      this.onstatechange?.()
      return Promise.resolve()
    }
  }
  stub('AudioContext', FakeContext)
  stub('DynamicsCompressorNode', function compressor() {
    return node()
  })
  return {
    started,
    opened: () => count,
    move: (bySeconds) => {
      now += bySeconds
      for (const one of stopping)
        if (one.stopAt <= now) {
          stopping.delete(one)
          one.stopAt = Infinity
          one.end()
        }
    },
  }
}
