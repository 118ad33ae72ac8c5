/** What was started on the fake audio clock: when, how fast, and when it was told to stop. */
export interface StartedSource {
  readonly at: number
  readonly rate: number
  stopAt: number
  readonly end: () => void
}

export interface FakeAudio {
  readonly started: StartedSource[]
  readonly opened: () => number
  /** Moves the audio clock; sources whose stop has come end. The page's clock runs 1000 ms ahead of it. */
  readonly move: (bySeconds: number) => void
}

/**
 * An AudioContext without sound for what stands above it: when is what started. `blocked`: it never
 * starts running, as without a gesture of the person.
 */
export const installFakeAudio = (
  stub: (name: string, value: unknown) => void,
  { blocked = false }: { readonly blocked?: boolean } = {},
): FakeAudio => {
  const started: StartedSource[] = []
  let count = 0
  let now = 1
  const parameter = () => ({
    value: 0,
    setValueAtTime: () => {},
    setTargetAtTime: () => {},
    cancelScheduledValues: () => {},
  })
  const node = () => ({
    gain: parameter(),
    connect: <T>(to: T): T => to,
    disconnect: () => {},
  })
  const source = () => {
    const self = {
      ...node(),
      buffer: null,
      playbackRate: parameter(),
      onended: undefined as (() => void) | undefined,
      start: (at: number) => {
        const end = (): void => self.onended?.()
        record = { at, rate: self.playbackRate.value || 1, stopAt: Infinity, end }
        started.push(record)
      },
      stop: (at = now) => {
        if (record) record.stopAt = Math.min(record.stopAt, at)
      },
    }
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
    getOutputTimestamp = () => ({ contextTime: now, performanceTime: now * 1000 + 1000 })
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
      for (const one of started)
        if (one.stopAt <= now) {
          one.stopAt = Infinity
          one.end()
        }
    },
  }
}
