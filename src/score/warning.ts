import { readingText, type ReadingText } from '@/text/reading'
import { tell, type Told } from '@/text/told'

/** What the person should know about how a file was read, as data. */
export type Warning = Told<ReadingText['warnings']>

/** One sentence for the person. */
export const explainWarning = (warning: Warning): string => tell(readingText.warnings, warning)
