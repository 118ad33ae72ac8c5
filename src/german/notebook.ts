import type { NotebookText } from '@/text/notebook'

export const notebook: NotebookText = {}
