import type { BarSigns } from './musicXml'

/** More bars than anyone plays at a sitting; signs that ask for more contradict each other. */
const mostPlayed = 20_000

/**
 * The bars of a piece in the order in which they are played, as indices: repeats are taken, endings
 * each in its pass, da capo and dal segno once, after which repeats are not taken (common practice,
 * no source). [|: 0, 1 :|, 2] -> 0 1 0 1 2.
 */
export const unfold = (bars: readonly BarSigns[]): readonly number[] => {
  const endings = spreadEndings(bars)
  const played: number[] = []
  let pass = 1
  let from = 0
  let jumped = false
  const enter = (i: number): number => {
    const leavesEndings = endings[i] === undefined && endings[i - 1] !== undefined
    if ((bars[i]?.repeatFrom && from !== i) || leavesEndings) {
      from = i
      pass = 1
    }
    return i
  }
  let i = enter(0)
  while (i < bars.length && played.length < mostPlayed) {
    const bar = bars[i] ?? {}
    const ending = endings[i]
    if (ending && !(jumped ? ending.last : ending.passes.includes(pass))) {
      i = enter(i + 1)
      continue
    }
    played.push(i)
    const times = ending ? ending.total : (bar.repeatBack?.times ?? 2)
    if (bar.fine && jumped) break
    if (bar.toCoda && jumped) {
      const coda = bars.findIndex((b, k) => b.coda && k > i)
      i = enter(coda < 0 ? i + 1 : coda)
    } else if (bar.repeatBack && !jumped && pass < times) {
      pass++
      i = from
    } else if ((bar.daCapo || bar.dalSegno) && !jumped) {
      jumped = true
      i = enter(
        bar.daCapo
          ? 0
          : Math.max(
              0,
              bars.findIndex((b) => b.segno),
            ),
      )
    } else {
      if (bar.repeatBack) {
        from = i + 1
        pass = 1
      }
      i = enter(i + 1)
    }
  }
  return played
}

interface Ending {
  readonly passes: readonly number[]
  /** How many passes the repeated music has in all. */
  readonly total: number
  /** Played when only one of the endings is: after da capo. */
  readonly last: boolean
}

/** The ending that each bar stands in. Endings that follow each other belong to one repeated stretch. */
const spreadEndings = (bars: readonly BarSigns[]): readonly (Ending | undefined)[] => {
  const passes: (readonly number[] | undefined)[] = []
  let open: readonly number[] | undefined
  for (const bar of bars) {
    open = bar.ending ?? open
    passes.push(open)
    if (bar.endingOver || (bar.repeatBack && open)) open = undefined
  }
  const result: (Ending | undefined)[] = []
  for (let i = 0; i < passes.length;) {
    let end = i
    while (passes[end]) end++
    const group = passes.slice(i, end).flatMap((own) => (own ? [own] : []))
    const highest = group.reduce((most, own) => Math.max(most, ...own), 0)
    // A first ending alone has its second in the music that goes on after it.
    const only = group.every((own) => own === group[0])
    for (const own of group)
      result.push({
        passes: own,
        total: only ? highest + 1 : highest,
        last: !only && own.includes(highest),
      })
    if (end === i) result.push(undefined)
    i = Math.max(end, i + 1)
  }
  return result
}
