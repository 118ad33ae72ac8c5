import type { VerovioToolkit } from 'verovio/esm'

/** Loads the engraver: verovio, LGPL-3.0-or-later, as files of their own that can be replaced. */
export const openToolkit = async (): Promise<VerovioToolkit> => {
  const [{ default: create }, { VerovioToolkit, enableLog, LOG_ERROR }] = await Promise.all([
    import('verovio/wasm'),
    import('verovio/esm'),
  ])
  const module = await create()
  enableLog(LOG_ERROR, module)
  return new VerovioToolkit(module)
}
