/** The engraver ships no types; these are the few calls that are used. */
declare module 'verovio/wasm' {
  const createVerovioModule: () => Promise<unknown>
  export default createVerovioModule
}

/** Where that module stands as a file. */
declare module 'verovio/wasm?url' {
  const address: string
  export default address
}

declare module 'verovio/esm' {
  export class VerovioToolkit {
    constructor(module: unknown)
    setOptions(options: Readonly<Record<string, unknown>>): void
    /** 1 when it was read, 0 when not. */
    loadData(data: string): number
    redoLayout(options?: Readonly<Record<string, unknown>>): void
    getPageCount(): number
    getLog(): string
    /** What was read, as MEI. */
    getMEI(): string
    renderToSVG(page: number): string
    renderToTimemap(options?: Readonly<Record<string, unknown>>): readonly TimemapEntry[]
    getMIDIValuesForElement(id: string): {
      readonly time: number
      readonly pitch: number
      readonly duration: number
    }
  }
  export const LOG_ERROR: number
  export const enableLog: (level: number, module: unknown) => void
  export interface TimemapEntry {
    /** Quarter notes from the start. */
    readonly qstamp: number
    readonly on?: readonly string[]
    readonly off?: readonly string[]
  }
}
