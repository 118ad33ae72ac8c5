/** What stands on the keys of this computer, which depends on its layout: the key called KeyY says Z in Germany. */
export interface PrintedKeys {
  /** 'KeyA' -> 'A' */
  readonly on: (code: string) => string
}

/** What browsers tell of the layout, some of them (Keyboard Map, WICG draft). */
export interface LayoutTeller {
  readonly getLayoutMap: () => Promise<ReadonlyMap<string, string>>
}

/** The English layout, */
const english: Readonly<Record<string, string>> = {
  Semicolon: ';',
  Quote: '’',
  BracketLeft: '[',
  BracketRight: ']',
}
/** and where the German one has something else. */
const german: Readonly<Record<string, string>> = {
  KeyY: 'Z',
  KeyZ: 'Y',
  Semicolon: 'Ö',
  Quote: 'Ä',
  BracketLeft: 'Ü',
  BracketRight: '+',
}

/** As the browser tells; where it does not, as was last seen at a press, or else as is usual in the language of the machine. */
export const createPrintedKeys = (
  target: Pick<EventTarget, 'addEventListener'>,
  language: string,
  teller: LayoutTeller | undefined,
): PrintedKeys => {
  const usual = /^de\b/i.test(language) ? german : english
  const known = new Map<string, string>()
  const learn = (code: string, sign: string): void => {
    if (sign.length === 1) known.set(code, sign === "'" ? '’' : sign.toUpperCase())
  }
  target.addEventListener('keydown', (event) => {
    if (!isKeyPress(event) || event.shiftKey || event.altKey || event.ctrlKey) return
    learn(event.code, event.key)
  })
  // A browser may refuse to tell, in a frame or in private: then the presses do.
  teller?.getLayoutMap().then(
    (layout) => layout.forEach((sign, code) => learn(code, sign)),
    () => undefined,
  )
  return { on: (code) => known.get(code) ?? usual[code] ?? code.replace(/^Key/, '') }
}

const isKeyPress = (event: Event): event is KeyboardEvent => 'code' in event
