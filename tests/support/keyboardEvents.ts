interface Modifiers {
  readonly repeat?: boolean
  readonly ctrlKey?: boolean
  readonly altKey?: boolean
  readonly metaKey?: boolean
  readonly key?: string
  /** What had the focus: 'INPUT', 'TEXTAREA', 'BUTTON', ... */
  readonly focus?: { readonly tagName: string; readonly type?: string }
}

/** A window that gets key events; Node has events, but neither keys nor focus. */
export const createKeyTarget = () => {
  const target = new EventTarget()
  const send = (type: string, code: string, at: number, modifiers: Modifiers = {}): Event => {
    const { focus = null, ...flags } = modifiers
    const event = Object.assign(new Event(type, { cancelable: true }), { code, ...flags })
    Object.defineProperty(event, 'timeStamp', { value: at })
    // The node that had the focus, from which the event would have come up to the window.
    Object.defineProperty(event, 'target', { value: focus })
    target.dispatchEvent(event)
    return event
  }
  return {
    target,
    down: (code: string, at: number, modifiers?: Modifiers) => send('keydown', code, at, modifiers),
    up: (code: string, at: number, modifiers?: Modifiers) => send('keyup', code, at, modifiers),
    blur: (at: number) => send('blur', '', at),
  }
}
