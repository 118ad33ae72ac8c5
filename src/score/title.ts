import { handOfName } from './partNames'
import type { SmfFile } from './score'

/**
 * The name of the first track is the name of the sequence (SMF 1.0); but in many files it names a
 * hand, an instrument or nothing, and then the file's name is the better title.
 */
export const chooseTitle = (file: SmfFile, fileName: string): string => {
  const first = file.tracks.find((events) => events.some((e) => e.kind === 'name'))
  const name = first?.find((e) => e.kind === 'name')?.text ?? ''
  const says = name !== '' && handOfName(name) === undefined && !saysNothing.test(name)
  return says ? name : titleOfFile(fileName)
}

/** 'music/mill race.mid' -> 'mill race'. */
export const titleOfFile = (fileName: string): string =>
  fileName.replace(/^.*[/\\]/, '').replace(/\.[^.]{1,8}$/, '') || 'Untitled'

const saysNothing =
  /^((acoustic |grand |e[. -]?)?piano|untitled|unnamed|track|tempo|conductor|control|master|staff|part|inst(rument)?|midi)\b.{0,12}$/i
