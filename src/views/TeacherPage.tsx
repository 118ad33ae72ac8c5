import { useCallback, useRef, useState } from 'react'
import { formatRoute, parseRoute, type TeacherRoute } from '@/app/route'
import { longestName } from '@/app/settings'
import type { TeacherPage as Page } from '@/app/teaching'
import type { Day } from '@/journal/day'
import { dateWords } from '@/text/dates'
import { teacherText } from '@/text/teacher'
import { useApp, useSelected } from './context'
import { Opened } from './Opened'
import { PageKeys, type PageKey } from './PageKeys'
import { useReviewed, useReviewedRoutes } from './reviewed'
import { allDrawn, sentMarkup, teacherFile } from './teacherFile'
import { TeacherSheet } from './TeacherSheet'
import sheetStyles from './teacherSheet.css?inline'
import { fileNameOf, spanWords } from './teacherWords'
import { useLoaded } from './useLoaded'
import './teacher.css'

type About = Pick<TeacherRoute, 'piece' | 'week'>

/** A page for the teacher about one piece or one week: to look at, to print, to send. */
export const TeacherPage = ({ piece, week }: About) => {
  const { reviews } = useReviewed()
  const read = useCallback(
    () => reviews.teacherPage(piece === undefined ? { week } : { piece }),
    [reviews, piece, week],
  )
  const { loaded, again } = useLoaded(read)
  return (
    <main className="page teacher">
      <Opened loaded={loaded} again={again}>
        {(page) => <Ready page={page} about={aboutOf(page, piece)} />}
      </Opened>
    </main>
  )
}

/** The week that is shown, by its Monday. */
const aboutOf = ({ span }: Page, piece: About['piece']): About => {
  if (piece !== undefined) return { piece }
  return span ? { week: span.from } : {}
}

const Ready = ({ page, about }: { readonly page: Page; readonly about: About }) => {
  const app = useApp()
  const { reviews, student } = useReviewed()
  const routes = useReviewedRoutes()
  const written = useSelected(app.lessons.remarks, (now) => now)
  const [ownName, setOwnName] = useState(() => app.settings.getState().name)
  const sheet = useRef<HTMLElement>(null)
  const [busy, setBusy] = useState(false)
  const words = teacherText.tools
  const place = routes.teacher(about)
  const remarks = written[place] ?? ''
  const name = student?.name ?? ownName
  const title = titleOf(page, about)

  const whenDrawn = async (run: (drawn: HTMLElement) => void | Promise<void>): Promise<void> => {
    if (!sheet.current || busy) return
    setBusy(true)
    try {
      await allDrawn(sheet.current)
      await run(sheet.current)
    } finally {
      setBusy(false)
    }
  }
  const print = (): void => void whenDrawn(() => window.print())
  const save = (): void =>
    void whenDrawn(async (drawn) => {
      const whole = name === '' ? title : `${title}, ${name}`
      const text = await teacherFile(whole, sentMarkup(drawn), sheetStyles)
      app.lessons.savePage(`${fileNameOf(whole, reviews.today())}.html`, text)
    })
  const turn = (step: 1 | -1): void => {
    const next = neighbourWeek(page, about, step)
    if (next) app.go(parseRoute(routes.teacher({ week: next })))
  }
  const keys: readonly PageKey[] = [
    { key: 'p', shown: 'P', words: teacherText.keys.print, run: print },
    { key: 's', shown: 'S', words: teacherText.keys.save, run: save },
    { key: 'arrowleft', shown: '←', words: teacherText.keys.before, run: () => turn(-1) },
    { key: 'arrowright', shown: '→', words: teacherText.keys.after, run: () => turn(1) },
  ]
  return (
    <>
      <div className="teacher-tools no-print">
        <p className="row">
          <a href={routes.review(about.piece)}>{words.review}</a>
          <a href={formatRoute({ kind: 'students' })}>{words.students}</a>
          <PageKeys keys={keys} />
        </p>
        <Choice page={page} about={about} />
        {!student && (
          <label className="teacher-field">
            {words.name}
            <input
              value={ownName}
              autoComplete="name"
              maxLength={longestName}
              onChange={({ target }) => setOwnName(target.value)}
              onBlur={() => app.changeSettings({ name: ownName })}
            />
          </label>
        )}
        <label className="teacher-field">
          {words.remarks}
          <textarea
            rows={3}
            value={remarks}
            onChange={({ target }) => app.lessons.remarks.setState({ [place]: target.value })}
          />
        </label>
        <p className="row">
          <button type="button" className="primary" disabled={busy} onClick={print}>
            {words.print} <kbd>P</kbd>
          </button>
          <button type="button" disabled={busy} onClick={save}>
            {words.save} <kbd>S</kbd>
          </button>
        </p>
      </div>
      <TeacherSheet
        sheet={sheet}
        page={page}
        title={title}
        isPiece={about.piece !== undefined}
        name={name}
        remarks={remarks}
        today={reviews.today()}
      />
    </>
  )
}

const titleOf = ({ span, pieces, choices }: Page, { piece }: About): string => {
  const { titles } = teacherText
  if (piece === undefined) return span ? titles.week(spanWords(span)) : titles.aWeek
  return (
    pieces[0]?.title ?? choices.pieces.find((each) => each.piece === piece)?.title ?? titles.aPiece
  )
}

/** The nearest week with practice before or after the one shown. */
const neighbourWeek = (
  { span, choices: { weeks } }: Page,
  { piece }: About,
  step: 1 | -1,
): Day | undefined => {
  if (piece !== undefined || !span) return undefined
  return step === 1
    ? weeks.findLast((week) => week > span.from)
    : weeks.find((week) => week < span.from)
}

/** Any week with practice, and any piece. */
const Choice = ({ page, about }: { readonly page: Page; readonly about: About }) => {
  const app = useApp()
  const routes = useReviewedRoutes()
  const { weeks, pieces } = page.choices
  const { week } = about
  const words = teacherText.tools
  const all =
    week === undefined || weeks.includes(week) ? weeks : [week, ...weeks].toSorted().toReversed()
  return (
    <label className="teacher-field">
      {words.about}
      <select
        value={routes.teacher(about)}
        onChange={({ target }) => app.go(parseRoute(target.value))}
      >
        <optgroup label={words.aWeek}>
          {all.map((each) => (
            <option key={each} value={routes.teacher({ week: each })}>
              {words.week(dateWords(each))}
            </option>
          ))}
        </optgroup>
        <optgroup label={words.aPiece}>
          {pieces.map(({ piece, title }) => (
            <option key={piece} value={routes.teacher({ piece })}>
              {title ?? words.untitled}
            </option>
          ))}
        </optgroup>
      </select>
    </label>
  )
}
