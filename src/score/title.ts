import { handOfName } from './partNames'

/**
 * The name of the first track is the name of the sequence (SMF 1.0); but in many files it names a
 * hand, an instrument or nothing, and then the file's name is the better title.
 */
export const chooseTitle = (
  tracks: readonly { readonly name: string | undefined }[],
  fileName: string,
): string => {
  const name = tracks.find((track) => track.name !== undefined)?.name ?? ''
  const says = name !== '' && handOfName(name) === undefined && !saysNothing.test(name)
  return says ? name : titleOfFile(fileName)
}

/** 'music/mill race.mid' -> 'mill race'; '.mid', which has no name, stays as it is. */
export const titleOfFile = (fileName: string): string =>
  fileName.replace(/^.*[/\\]/, '').replace(/\.[^.]{1,8}$/, '') || fileName

const saysNothing =
  /^((acoustic |grand |e[. -]?)?piano|untitled|unnamed|track|tempo|conductor|control|master|staff|part|inst(rument)?|midi)\b.{0,12}$/i
