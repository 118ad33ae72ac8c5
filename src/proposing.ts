import type { Ports } from '@/app/ports'
import type { Compared, WrittenDigits } from '@/fingering/compare'
import type { FingeringSettings, HandFingering } from '@/fingering/fingering'
import type { Note } from '@/music/music'
import { askWorker } from './asking'

export interface ProposingRequest {
  readonly notes: readonly Note[]
  readonly settings: FingeringSettings
  /** Absent: fingerings are to be proposed; else these are to be compared. */
  readonly versions?: readonly WrittenDigits[]
}

export type ProposingAnswer =
  | { readonly kind: 'proposed'; readonly fingering: HandFingering }
  | { readonly kind: 'compared'; readonly versions: readonly Compared[] }

/** Fingers in a worker: the page does not stall, and its first load is without the model. */
export const proposeInWorker: Ports['proposeFingering'] = async (notes, settings) => {
  const answer = await ask<ProposingAnswer>({ notes, settings })
  if (answer.kind !== 'proposed') throw new Error('the worker compared where it was to propose')
  return answer.fingering
}

export const compareInWorker: Ports['compareFingerings'] = async (notes, settings, versions) => {
  const answer = await ask<ProposingAnswer>({ notes, settings, versions })
  if (answer.kind !== 'compared') throw new Error('the worker proposed where it was to compare')
  return answer.versions
}

const ask = askWorker<ProposingRequest>(
  () => new Worker(new URL('./proposing.worker.ts', import.meta.url), { type: 'module' }),
)
