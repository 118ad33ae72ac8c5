import { spokenLanguage } from '@/text/text'

/**
 * A page as one file that is sent by mail and opened anywhere, without a network: everything is in it,
 * nothing in it can run, and nothing is fetched. Its own policy allows the one style sheet by its hash
 * (Content Security Policy Level 3, 8.4) and nothing else.
 */
export const teacherFile = async (title: string, body: string, styles: string): Promise<string> => {
  const policy = [
    "default-src 'none'",
    `style-src 'sha256-${await sha256(styles)}'`,
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ')
  return [
    '<!doctype html>',
    `<html lang="${spokenLanguage()}">`,
    '<head>',
    '<meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="${policy}">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${escapeText(title)}</title>`,
    `<style>${styles}</style>`,
    '</head>',
    `<body class="teacher-file">${body}</body>`,
    '</html>',
    '',
  ].join('\n')
}

/** As text between tags (HTML Living Standard, 13.3). */
export const escapeText = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;')

const sha256 = async (text: string): Promise<string> => {
  const hash = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text))
  return btoa(String.fromCharCode(...new Uint8Array(hash)))
}

/** What stands on the page as it is to be sent: its styles by class alone, without what only the screen needs. */
export const sentMarkup = (sheet: Element): string => {
  const copy = sheet.cloneNode(true)
  if (!(copy instanceof Element)) return ''
  for (const each of copy.querySelectorAll('.no-print, script, style')) each.remove()
  for (const each of [copy, ...copy.querySelectorAll('*')])
    for (const name of each.getAttributeNames())
      if (name === 'style' || name === 'contenteditable' || /^(data-|on)/.test(name))
        each.removeAttribute(name)
  return copy.outerHTML
}

/** Resolves when every notation on the sheet is drawn, or told that it cannot be. */
export const allDrawn = (sheet: Element): Promise<void> =>
  new Promise((resolve) => {
    const look = (): void => {
      if (sheet.querySelector('[data-drawing=waiting]')) requestAnimationFrame(look)
      // The pencil marks come with the frame after.
      else requestAnimationFrame(() => requestAnimationFrame(() => resolve()))
    }
    look()
  })
