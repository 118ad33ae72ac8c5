import { lazy, Suspense, useEffect, type ReactNode } from 'react'
import { formatRoute } from '@/app/route'
import { shellText } from '@/text/shell'
import { useApp, useSelected } from './context'
import { InstrumentState } from './InstrumentState'
import { OtherPage } from './OtherPage'
import { PageKeys } from './PageKeys'
import { phrase } from './phrase'
import { Sheet } from './Sheet'
import { keepFocus } from './shortcuts'
import { useDrop } from './useDrop'

/** The screens: the one that is asked for comes first, the others when the page stands. */
const later = {
  piece: () => import('./Piece'),
  practice: () => import('./Practice'),
  buildUp: () => import('./BuildUp'),
  pieces: () => import('./Pieces'),
  parts: () => import('./PartsChoice'),
  libraryProblem: () => import('./LibraryProblem'),
  write: () => import('./WritePiece'),
  record: () => import('./RecordPiece'),
  today: () => import('./Today'),
  plan: () => import('./PieceWeeks'),
  summary: () => import('./Summary'),
  tapTest: () => import('./TapTest'),
  review: () => import('./Review'),
  teacher: () => import('./TeacherPage'),
  students: () => import('./Students'),
  studentRecord: () => import('./StudentRecord'),
  records: () => import('./Records'),
  licences: () => import('./Licences'),
  repetitions: () => import('./Repetitions'),
  notebook: () => import('./Notebook'),
  options: () => import('./Options'),
}
const Piece = lazy(async () => ({ default: (await later.piece()).Piece }))
const Practice = lazy(async () => ({ default: (await later.practice()).Practice }))
const BuildUp = lazy(async () => ({ default: (await later.buildUp()).BuildUp }))
const Pieces = lazy(async () => ({ default: (await later.pieces()).Pieces }))
const PartsChoice = lazy(async () => ({ default: (await later.parts()).PartsChoice }))
const LibraryProblem = lazy(async () => ({
  default: (await later.libraryProblem()).LibraryProblem,
}))
const WritePiece = lazy(async () => ({ default: (await later.write()).WritePiece }))
const RecordPiece = lazy(async () => ({ default: (await later.record()).RecordPiece }))
const Today = lazy(async () => ({ default: (await later.today()).Today }))
const PieceWeeks = lazy(async () => ({ default: (await later.plan()).PieceWeeks }))
const Summary = lazy(async () => ({ default: (await later.summary()).Summary }))
const Review = lazy(async () => ({ default: (await later.review()).Review }))
const TeacherPage = lazy(async () => ({ default: (await later.teacher()).TeacherPage }))
const Students = lazy(async () => ({ default: (await later.students()).Students }))
const RecordOf = lazy(async () => ({ default: (await later.studentRecord()).RecordOf }))
const Repetitions = lazy(async () => ({ default: (await later.repetitions()).Repetitions }))
const Records = lazy(async () => ({ default: (await later.records()).Records }))
const Licences = lazy(async () => ({ default: (await later.licences()).Licences }))
const Notebook = lazy(async () => ({ default: (await later.notebook()).Notebook }))
const TapTest = lazy(async () => ({ default: (await later.tapTest()).TapTest }))
const Options = lazy(async () => ({ default: (await later.options()).Options }))

/** The head of every page, and the screen that the address names. */
export const Shell = () => {
  const app = useApp()
  const screen = useSelected(app.screen, (state) => state)
  const over = useDrop()
  // Ahead of time, so that no screen fails or waits when the network is gone.
  useEffect(() => {
    for (const load of Object.values(later)) void load()
  }, [])
  return (
    <>
      <header className="head">
        <a className="name" href={formatRoute({ kind: 'pieces' })}>
          Passagework
        </a>
        <nav className="row" aria-label={shellText.pages}>
          <a href={formatRoute({ kind: 'pieces' })}>{shellText.pieces}</a>
          <a href={formatRoute({ kind: 'today' })}>{shellText.today}</a>
          <a href={formatRoute({ kind: 'summary' })}>{shellText.session}</a>
          <a href={formatRoute({ kind: 'review' })}>{shellText.review}</a>
        </nav>
        <div className="row head-right">
          <InstrumentState />
          <Sheet word={shellText.options} shortcut=",">
            <Suspense fallback={null}>
              <Options />
            </Suspense>
          </Sheet>
        </div>
      </header>
      <OtherPage />
      <Problems />
      {over && <div className="drop-here" aria-hidden="true" />}
      <Suspense fallback={<Opening />}>
        <Screen screen={screen} />
      </Suspense>
    </>
  )
}

/** What is wrong with keeping the record and the pieces; whatever it is, the record can be saved. */
const Problems = () => {
  const app = useApp()
  const kept = useSelected(app.session.store, (state) => state.problem)
  // Both hands are busy and the music needs the room: one line, until the person has time for it.
  const isDrill = useSelected(app.screen, ({ kind }) => kind === 'practice')
  const copies = useSelected(app.records.copies, (state) => state.problem)
  return (
    <>
      {kept !== undefined && (
        <div className="notice row" role="alert">
          {isDrill ? (
            <details>
              <summary>{shellText.recordTrouble}</summary>
              <p>{kept}</p>
            </details>
          ) : (
            <p>{kept}</p>
          )}
          <button type="button" onPointerDown={keepFocus} onClick={() => void app.records.save()}>
            {shellText.saveRecord}
          </button>
        </div>
      )}
      {copies !== undefined && (
        <p className="notice" role="alert">
          {copies}
        </p>
      )}
      <Suspense>
        <LibraryProblem />
      </Suspense>
    </>
  )
}

const Opening = () => (
  <main className="page">
    <p className="soft">{shellText.opening}</p>
  </main>
)

const Screen = ({
  screen,
}: {
  readonly screen: ReturnType<ReturnType<typeof useApp>['screen']['getState']>
}) => {
  switch (screen.kind) {
    case 'opening':
      return <Opening />
    case 'pieces':
      return <Pieces />
    case 'piece':
      return (
        <>
          {screen.piece.parts && (
            <PartsChoice key={`parts ${screen.piece.score.id}`} piece={screen.piece} />
          )}
          <Piece key={screen.piece.score.id} piece={screen.piece} />
        </>
      )
    case 'practice':
      return <Practice practising={screen.practising} />
    case 'buildUp':
      return <BuildUp piece={screen.piece} standing={screen.standing} />
    case 'today':
      return <Today />
    case 'plan':
      return <PieceWeeks key={screen.piece} piece={screen.piece} />
    case 'summary':
      return <Summary />
    case 'write':
      return <WritePiece />
    case 'record':
      return <RecordPiece />
    case 'review':
      return (
        <RecordOf student={screen.student}>
          <Review key={screen.piece} piece={screen.piece} />
        </RecordOf>
      )
    case 'teacher':
      return (
        <RecordOf student={screen.student}>
          <TeacherPage key={formatRoute(screen)} {...screen} />
        </RecordOf>
      )
    case 'students':
      return <Students />
    case 'repetitions':
      return (
        <RecordOf student={screen.student}>
          <Repetitions key={formatRoute(screen)} asked={screen.asked} />
        </RecordOf>
      )
    case 'journal':
      return <Records />
    case 'licences':
      return <Licences />
    case 'notebook':
      return <Notebook />
    case 'tapTest':
      return <TapTest />
    case 'lost':
      return (
        <main className="page">
          <div className="row">
            <h1>{shellText.lost.title}</h1>
            <PageKeys keys={[]} />
          </div>
          <p>
            {phrase(
              shellText.lost.how<ReactNode>((word) => (
                <a href={formatRoute({ kind: 'pieces' })}>{word}</a>
              )),
            )}
          </p>
        </main>
      )
  }
}
