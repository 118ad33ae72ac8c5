/** The only place where edges are made and handed to the app. */
import '@fontsource-variable/source-serif-4/wght.css'
import { createRoot } from 'react-dom/client'
import { createApp, type App } from '@/app/app'
import type { FolderPort } from '@/app/copyPorts'
import type { Licence, PlayerPort, Ports } from '@/app/ports'
import { baseFor, createComputerKeys, type ComputerKeys } from '@/devices/computerKeys'
import { mergeDevices } from '@/devices/mergeDevices'
import { createEchoes } from '@/devices/echoes'
import { createMidiKeyboard } from '@/devices/midiKeyboard'
import { createMidiOut } from '@/devices/midiOut'
import { createPrintedKeys, type LayoutTeller, type PrintedKeys } from '@/devices/printedKeys'
import { createScreenKeys } from '@/devices/screenKeys'
import { createSimulatedPlayer } from '@/devices/simulatedPlayer'
import { createEngraver, type Engraver } from '@/engraving/engraving'
import { failed, ok } from '@/music/result'
import { ms } from '@/music/units'
import { createSound } from '@/sound/createSound'
import { nameNotes } from '@/text/noteNames'
import { speak } from '@/text/text'
import { openStorage } from '@/storage/indexedDb'
import type { Storage } from '@/storage/storage'
import { HouseContext } from '@/views/context'
import { Shell } from '@/views/Shell'
import '@/views/tokens.css'
import '@/views/base.css'
import '@/views/screens.css'
import '@/views/parts.css'
import '@/views/practice.css'
import '@/views/taptest.css'
import { folderPort } from './folderPort'
import { soundPort } from './hearing'
import { keepForOffline } from './keepForOffline'
import { readInWorker } from './reading'
import { fetchWords, languageOf } from './speaking'
import { loadSamples } from './samples'
import { compareInWorker, proposeInWorker } from './proposing'
import { assessInWorker, layOutInWorker } from './spotting'
import { storagePort } from './storagePort'

const computerKeysPort = (keys: ComputerKeys, printed: PrintedKeys): Ports['computerKeys'] => ({
  reach: (wanted) => {
    const base = baseFor(wanted)
    if (base !== undefined) keys.place(base)
  },
  letters: () =>
    new Map([...keys.layout()].map(([code, played]) => [played, printed.on(code)] as const)),
})

/** What some browsers tell of the keys of this computer. */
const layoutTeller = (): LayoutTeller | undefined =>
  'keyboard' in navigator ? (navigator.keyboard as LayoutTeller) : undefined

/** The first seed of the simulated player; each time it plays otherwise. */
let seed = 1

const playerPort = (): PlayerPort => {
  const player = createSimulatedPlayer({
    now: () => performance.now(),
    setTimer: (run, delay) => window.setTimeout(run, delay),
    clearTimer: (timer) => window.clearTimeout(timer),
  })
  /** Counts the orders: one that was stopped while its plan was fetched does not play. */
  let orders = 0
  return {
    listen: player.listen,
    stop: () => {
      orders++
      player.stop()
    },
    play: async (chunk, tempo, at) => {
      const order = ++orders
      const { planRun, planTrial } = await import('@/devices/simulatedTake')
      if (order !== orders) return
      seed += 1
      const repetitions = planTrial(chunk, seed)
      return player.start(planRun(chunk, { tempo, seed, repetitions }), at)
    },
  }
}

const addressPort: Ports['address'] = {
  read: () => window.location.hash,
  write: (hash) => {
    window.location.hash = hash
  },
  watch: (see) => {
    const onChange = (): void => see(window.location.hash)
    window.addEventListener('hashchange', onChange)
    return () => window.removeEventListener('hashchange', onChange)
  },
}

const fileTypes: Readonly<Record<string, string>> = { '.csv': 'text/csv', '.html': 'text/html' }

const saveByDownload = (name: string, parts: readonly string[]): void => {
  const type = fileTypes[name.slice(name.lastIndexOf('.'))] ?? 'application/jsonl'
  const address = URL.createObjectURL(new Blob([...parts], { type }))
  const link = Object.assign(document.createElement('a'), { href: address, download: name })
  link.click()
  // The download has its own hold on the data once it has begun.
  window.setTimeout(() => URL.revokeObjectURL(address), 10_000)
}

/** They are written beside the page when it is built. */
const readLicences: Ports['licences'] = async () => {
  try {
    const answer = await fetch('./licences.json')
    return ok((await answer.json()) as readonly Licence[])
  } catch (error) {
    return failed(String(error))
  }
}

/** The last moments of a page: what is new goes into the folder; what is only in memory makes the browser ask. */
const watchLeaving = (storage: Storage, folder: FolderPort): void => {
  document.addEventListener('visibilitychange', () => {
    if (document.hidden) void folder.write()
  })
  window.addEventListener('beforeunload', (event) => {
    if (storage.unsaved().length > 0) event.preventDefault()
  })
}

/** The page in the person's words. When they choose others all of it is shown anew, where it stands: nothing is made anew, and a drill goes on. */
const showInWords = async (app: App, engraver: Engraver): Promise<void> => {
  const element = document.getElementById('root')
  if (!element) throw new Error('index.html has no root')
  const root = createRoot(element)
  const show = async (): Promise<void> => {
    const choice = app.settings.getState().language
    const language = languageOf(choice, navigator.language)
    const words = await fetchWords(language)
    if (app.settings.getState().language !== choice) return
    if (words.ok) {
      speak(language, words.value)
      document.documentElement.lang = language
    }
    nameNotes(app.settings.getState().noteNames)
    root.render(
      <HouseContext value={{ app, engraver, lacking: words.ok ? undefined : language }}>
        <Shell />
      </HouseContext>,
    )
  }
  app.settings.subscribe((now, before) => {
    if (now.language !== before.language || now.noteNames !== before.noteNames) void show()
  })
  await show()
}

/** Thirty times a second: the settling time of the judge is longer than that. */
const momentMs = 33

const start = async (): Promise<void> => {
  const opened = await openStorage()
  const storage = opened.ok
    ? opened.value
    : (await import('@/storage/waiting')).rememberInstead(opened.reason)
  const folder = folderPort(storage)
  const echoes = createEchoes()
  const midi = createMidiKeyboard(echoes.isEcho)
  const midiOut = createMidiOut(echoes.sent, window)
  const computerKeys = createComputerKeys(window)
  const printed = createPrintedKeys(window, navigator.language, layoutTeller())
  const screenKeys = createScreenKeys()
  const app = createApp({
    licences: readLicences,
    person: mergeDevices([midi, computerKeys, screenKeys]),
    midi,
    midiOut,
    computerKeys: computerKeysPort(computerKeys, printed),
    screenKeys,
    player: playerPort(),
    sound: soundPort(createSound(), midiOut),
    storage: storagePort(storage),
    folder,
    students: async () => {
      const [{ openStudentStorage, createStudentMemory }, { studentsPort }] = await Promise.all([
        import('@/storage/students'),
        import('./studentsPort'),
      ])
      // Where one's own record finds no database, theirs will find none either.
      return studentsPort(opened.ok ? openStudentStorage() : createStudentMemory())
    },
    readPiece: readInWorker,
    assess: assessInWorker,
    layOut: layOutInWorker,
    proposeFingering: proposeInWorker,
    compareFingerings: compareInWorker,
    samples: loadSamples,
    kept: keepForOffline(),
    saveFile: saveByDownload,
    now: () => ms(performance.now()),
    wallClock: () => Date.now(),
    newId: () => crypto.randomUUID(),
    everyMoment: (run) => {
      const timer = window.setInterval(run, momentMs)
      return () => window.clearInterval(timer)
    },
    address: addressPort,
  })
  const engraver = createEngraver()
  app.settings.subscribe(({ theme }) => {
    if (theme === 'auto') delete document.documentElement.dataset['theme']
    else document.documentElement.dataset['theme'] = theme
  })
  await showInWords(app, engraver)
  watchLeaving(storage, folder)
  await app.open()
  engraver.warm()
  // What is older than today is packed while nobody plays yet; should it fail, it is tried next time.
  void storage.pack()
}

void start()
