import type { ShellText } from '@/text/shell'

export const shell: ShellText = {}
