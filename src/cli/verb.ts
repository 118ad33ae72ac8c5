import type { Result } from '@/music/result'
import type { Options } from './options'

/** What a verb has to say: as one JSON object, and for people. */
export interface Answer {
  readonly json: object
  readonly text: () => string
}

/** A failure is one clear line. */
export type Verb = (options: Options) => Result<Answer, string>
