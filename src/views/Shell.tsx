import { formatRoute } from '@/app/route'
import { useApp, useSelected } from './context'
import { InstrumentState } from './InstrumentState'
import { Options } from './Options'
import { Piece } from './Piece'
import { Pieces } from './Pieces'
import { Practice } from './Practice'
import { Summary } from './Summary'
import { TapTest } from './TapTest'
import { useDrop } from './useDrop'

/** The head of every page, and the screen that the address names. */
export const Shell = () => {
  const app = useApp()
  const screen = useSelected(app.screen, (state) => state)
  const problems = [
    useSelected(app.session.store, (state) => state.problem),
    useSelected(app.library.store, (state) => state.problem),
  ].filter((problem) => problem !== undefined)
  const over = useDrop()
  return (
    <>
      <header className="head">
        <a className="name" href={formatRoute({ kind: 'pieces' })}>
          Passagework
        </a>
        <nav className="row" aria-label="Pages">
          <a href={formatRoute({ kind: 'pieces' })}>Pieces</a>
          <a href={formatRoute({ kind: 'summary' })}>Session</a>
        </nav>
        <div className="row head-right">
          <InstrumentState />
          <Options />
        </div>
      </header>
      {problems.map((problem) => (
        <p key={problem} className="notice" role="alert">
          {problem}
        </p>
      ))}
      {over && <div className="drop-here" aria-hidden="true" />}
      <Screen screen={screen} />
    </>
  )
}

const Screen = ({
  screen,
}: {
  readonly screen: ReturnType<ReturnType<typeof useApp>['screen']['getState']>
}) => {
  switch (screen.kind) {
    case 'opening':
      return (
        <main className="page">
          <p className="soft">Opening …</p>
        </main>
      )
    case 'pieces':
      return <Pieces />
    case 'piece':
      return <Piece key={screen.piece.score.id} piece={screen.piece} />
    case 'practice':
      return <Practice key={screen.practising.chunk.id} practising={screen.practising} />
    case 'summary':
      return <Summary />
    case 'tapTest':
      return <TapTest />
    case 'lost':
      return (
        <main className="page">
          <h1>Not here</h1>
          <p>
            This address names a piece that is not on this machine. Go to the{' '}
            <a href={formatRoute({ kind: 'pieces' })}>pieces</a> and bring its file in again: the
            record of your practice is kept and will find it.
          </p>
        </main>
      )
  }
}
