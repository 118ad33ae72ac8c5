import type { VerovioToolkit } from 'verovio/esm'

/** The engraver's module, loaded as the machine at hand loads it. */
type LoadModule = () => Promise<{ readonly default: () => Promise<unknown> }>

/** Loads the engraver: verovio, LGPL-3.0-or-later, as files of their own that can be replaced. */
export const openToolkit = async (loadModule: LoadModule): Promise<VerovioToolkit> => {
  const [{ default: create }, { VerovioToolkit, enableLog, LOG_ERROR }] = await Promise.all([
    loadModule(),
    import('verovio/esm'),
  ])
  const module = await create()
  enableLog(LOG_ERROR, module)
  return new VerovioToolkit(module)
}
