/**
 * MIDI inputs and outputs that a test plugs, plays and pulls, below the standard API: what stands above,
 * the webmidi library included, is the real thing. Behaves as the Web MIDI API (W3C) says: `open()`
 * changes `connection` later, an open port that is pulled becomes pending, a port that comes back is
 * the same object with the same id, `inputs` lists only what is connected, statechange is fired at
 * the access and at the port.
 *
 * In a page: `page.addInitScript(installFakeMidi, { inputs: ['Stage 88'] })`, then
 * `page.evaluate(() => window.fakeMidi.send('Stage 88', [0x90, 60, 64], performance.now()))`.
 */
export interface FakeMidi {
  /** Resolves when the page has been told. The same name gives the same port again. */
  readonly plug: (name: string) => Promise<void>
  readonly pull: (name: string) => Promise<void>
  /** One message with the time it is said to have come in. Throws where no page listens to that input. */
  readonly send: (name: string, bytes: readonly number[], timeStamp?: number) => void
  /** Messages in real time, `at` milliseconds from now; each is stamped with its planned time. */
  readonly play: (
    name: string,
    messages: readonly { readonly bytes: readonly number[]; readonly at: number }[],
  ) => Promise<void>
  /** From now on access is refused, or given. */
  readonly deny: () => void
  readonly allow: () => void
  /** Another program has the input: it is closed to a page that heard it and cannot be opened; or it can again. */
  readonly occupy: (name: string) => void
  readonly free: (name: string) => void
  /** What was sent to an output, each with its time, in the order of sending. */
  readonly sent: (
    name: string,
  ) => readonly { readonly bytes: readonly number[]; readonly at: number }[]
  /** Whether a page has opened the input and so hears it. */
  readonly isOpen: (name: string) => boolean
}

export interface FakeMidiOptions {
  /** Plugged from the start. */
  readonly inputs?: readonly string[]
  readonly outputs?: readonly string[]
  /** Outputs whose instrument sends back what is sent to it, on the input of the same name. */
  readonly looped?: readonly string[]
  readonly denied?: boolean
  /** Inputs that another program has from the start. */
  readonly occupied?: readonly string[]
  /** A browser without Web MIDI. */
  readonly absent?: boolean
}

declare global {
  interface Window {
    fakeMidi: FakeMidi
  }
}

/** Stands alone, without imports, so that it can be sent into a page as source text. */
export const installFakeMidi = (options: FakeMidiOptions = {}): FakeMidi => {
  type Handler = ((event: Event) => void) | null | undefined
  const plugged = new Set<string>(options.inputs)
  const occupied = new Set<string>(options.occupied)
  const ids = new Map<string, string>()
  const outputs = new Set<string>(options.outputs)
  const looped = new Set<string>(options.looped)
  const sentTo = new Map<string, { readonly bytes: readonly number[]; readonly at: number }[]>()
  let denied = options.denied === true

  const nextTask = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0))
  type Type = 'input' | 'output'
  const idOf = (type: Type, name: string): string => {
    const id = ids.get(`${type} ${name}`) ?? `fake-${type}-${ids.size + 1}`
    ids.set(`${type} ${name}`, id)
    return id
  }
  const stamp = (event: Event, timeStamp: number): Event =>
    Object.defineProperty(event, 'timeStamp', { value: timeStamp })

  class Port extends EventTarget {
    readonly type: Type
    readonly manufacturer = 'Passagework tests'
    readonly version = '1'
    readonly id: string
    readonly name: string
    state: 'connected' | 'disconnected' = 'connected'
    connection: 'open' | 'closed' | 'pending' = 'closed'
    onstatechange: Handler
    readonly #access: Access
    #onmidimessage: Handler = null
    #opening: Promise<Port> | undefined

    constructor(access: Access, name: string, type: Type = 'input') {
      super()
      this.#access = access
      this.name = name
      this.type = type
      this.id = idOf(type, name)
      this.addEventListener('statechange', (event) => this.onstatechange?.(event))
      this.addEventListener('midimessage', (event) => this.#onmidimessage?.(event))
    }

    get onmidimessage(): Handler {
      return this.#onmidimessage
    }
    /** Setting a handler opens the port without asking. */
    set onmidimessage(handler: Handler) {
      this.#onmidimessage = handler
      if (handler) this.open().catch(() => {})
    }

    open(): Promise<Port> {
      this.#opening ??= this.#openLater().finally(() => {
        this.#opening = undefined
      })
      return this.#opening
    }
    async #openLater(): Promise<Port> {
      await nextTask()
      if (this.connection === 'open') return this
      if (this.state === 'disconnected') {
        this.change('disconnected', 'pending')
        return this
      }
      if (occupied.has(this.name)) {
        this.change('connected', 'closed')
        throw new DOMException(`${this.name} is in use`, 'InvalidAccessError')
      }
      this.change('connected', 'open')
      return this
    }
    async close(): Promise<Port> {
      await nextTask()
      this.change(this.state, 'closed')
      return this
    }

    change(state: Port['state'], connection: Port['connection']): void {
      if (this.state === state && this.connection === connection) return
      this.state = state
      this.connection = connection
      for (const target of [this.#access, this])
        target.dispatchEvent(Object.assign(new Event('statechange'), { port: this }))
    }
    /** The device is there again. A port that was open when it was pulled tells so once it is open. */
    async reconnect(): Promise<void> {
      await nextTask()
      if (this.connection !== 'pending') return this.change('connected', this.connection)
      this.state = 'connected'
      await this.open().catch(() => {})
    }
    async disconnect(): Promise<void> {
      await nextTask()
      this.change('disconnected', this.connection === 'open' ? 'pending' : this.connection)
    }
    /** Of an output. A port that is gone throws (Web MIDI API, MIDIOutput.send). */
    send(data: Iterable<number>, at = 0): void {
      if (this.state === 'disconnected') throw new DOMException(this.name, 'InvalidStateError')
      const bytes = [...data]
      const due = Math.max(at, performance.now())
      sentTo.set(this.name, [...(sentTo.get(this.name) ?? []), { bytes, at: due }])
      if (!looped.has(this.name)) return
      setTimeout(() => send(this.name, bytes, due + 2), due + 2 - performance.now())
    }
    hear(bytes: readonly number[], timeStamp: number): void {
      const event = Object.assign(new Event('midimessage'), { data: Uint8Array.from(bytes) })
      this.dispatchEvent(stamp(event, timeStamp))
    }
  }

  const connected = (ports: ReadonlyMap<string, Port>): ReadonlyMap<string, Port> =>
    new Map(
      [...ports.values()]
        .filter((port) => port.state === 'connected')
        .map((port) => [port.id, port]),
    )

  class Access extends EventTarget {
    readonly sysexEnabled = false
    #onstatechange: Handler
    readonly ports = new Map<string, Port>()
    readonly out = new Map<string, Port>()

    constructor() {
      super()
      for (const name of plugged) this.ports.set(name, new Port(this, name))
      for (const name of outputs) this.out.set(name, new Port(this, name, 'output'))
    }
    get onstatechange(): Handler {
      return this.#onstatechange
    }
    /** Its turn among the listeners is that of the moment when it is first set (HTML, event handlers). */
    set onstatechange(handler: Handler) {
      if (this.#onstatechange === undefined && handler)
        this.addEventListener('statechange', (event) => this.#onstatechange?.(event))
      this.#onstatechange = handler
    }
    get inputs(): ReadonlyMap<string, Port> {
      return connected(this.ports)
    }
    get outputs(): ReadonlyMap<string, Port> {
      return connected(this.out)
    }
    async plug(name: string): Promise<void> {
      await this.out.get(name)?.reconnect()
      const known = this.ports.get(name)
      if (known) return known.reconnect()
      await nextTask()
      const port = new Port(this, name)
      this.ports.set(name, port)
      // New, it goes from disconnected to connected before the page's eyes.
      port.state = 'disconnected'
      port.change('connected', 'closed')
    }
  }

  const accesses: Access[] = []
  const portsOf = (name: string): Port[] => accesses.flatMap(({ ports }) => ports.get(name) ?? [])
  const openPorts = (name: string): Port[] =>
    portsOf(name).filter((port) => port.connection === 'open')
  const send = (name: string, bytes: readonly number[], timeStamp = performance.now()): void => {
    const open = openPorts(name)
    if (open.length === 0) throw new Error(`fake MIDI: nobody has opened "${name}"`)
    for (const port of open) port.hear(bytes, timeStamp)
  }
  const requestMIDIAccess = async (): Promise<Access> => {
    await nextTask()
    if (denied) throw new DOMException('Permission was not granted', 'NotAllowedError')
    const access = new Access()
    accesses.push(access)
    return access
  }
  Object.defineProperty(navigator, 'requestMIDIAccess', {
    value: options.absent === true ? undefined : requestMIDIAccess,
    configurable: true,
  })

  const fakeMidi: FakeMidi = {
    plug: async (name) => {
      plugged.add(name)
      await Promise.all(accesses.map((access) => access.plug(name)))
      // The page opens the new port in answer; wait for that too.
      await nextTask()
      await nextTask()
    },
    pull: async (name) => {
      plugged.delete(name)
      const out = accesses.flatMap((access) => access.out.get(name) ?? [])
      await Promise.all([...portsOf(name), ...out].map((port) => port.disconnect()))
    },
    send,
    play: async (name, messages) => {
      const start = performance.now()
      for (const { bytes, at } of messages) {
        const wait = start + at - performance.now()
        if (wait > 0) await new Promise((resolve) => setTimeout(resolve, wait))
        send(name, bytes, start + at)
      }
    },
    deny: () => {
      denied = true
    },
    allow: () => {
      denied = false
    },
    occupy: (name) => {
      occupied.add(name)
      for (const port of openPorts(name)) port.change('connected', 'closed')
    },
    free: (name) => occupied.delete(name),
    sent: (name) => sentTo.get(name) ?? [],
    isOpen: (name) => openPorts(name).length > 0,
  }
  Object.defineProperty(globalThis, 'fakeMidi', { value: fakeMidi, configurable: true })
  return fakeMidi
}
