/**
 * Deutsch: each catalogue of `src/text` once more. An object for each area, of the type of the English
 * one, so that nothing can lack.
 *
 * The words: Stück (piece), Anschlag (onset), Stelle (place), schwere Stelle (hard spot), Passage,
 * Ausschnitt (chunk), Übung (exercise), Aufbau (build-up), Durchgang (repetition), fehlerfrei, fehlerhaft,
 * abgebrochen (clean, flawed, broken off), Fehler (flaw), Serie (streak), Zieltempo, Stufe (rung),
 * fehlerfreier Anteil (clean share), sicher, behalten, wieder unsicher (secure, kept, slipped), kalt,
 * Aufnahme (take), Aufzeichnung (record, journal), Rückblick (review).
 */
import { buildUp } from './buildUp'
import { coach } from './coach'
import { dates } from './dates'
import { decisions } from './decisions'
import { devices } from './devices'
import { drill } from './drill'
import { engraving } from './engraving'
import { fingering } from './fingering'
import { flaws } from './flaws'
import { keys } from './keys'
import { music } from './music'
import { notebook } from './notebook'
import { numbers } from './numbers'
import { options } from './options'
import { piece } from './piece'
import { pieces } from './pieces'
import { plan } from './plan'
import { reading } from './reading'
import { records } from './records'
import { repetitions } from './repetitions'
import { review } from './review'
import { samples } from './samples'
import { session } from './session'
import { shell } from './shell'
import { spots } from './spots'
import { storage } from './storage'
import { students } from './students'
import { tapTest } from './tapTest'
import { teacher } from './teacher'
import { write } from './write'

export const german = {
  buildUp,
  coach,
  dates,
  decisions,
  devices,
  drill,
  engraving,
  fingering,
  flaws,
  keys,
  music,
  notebook,
  numbers,
  options,
  piece,
  pieces,
  plan,
  reading,
  records,
  repetitions,
  review,
  samples,
  session,
  shell,
  spots,
  storage,
  students,
  tapTest,
  teacher,
  write,
}
