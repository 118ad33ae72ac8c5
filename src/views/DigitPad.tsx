import { fingers } from '@/music/fingers'
import type { Note } from '@/music/music'
import { fingeringText } from '@/text/fingering'
import { keepFocus } from './shortcuts'
import type { Digits } from './useDigitKeys'

/** The digits as buttons, for a tablet: the same as the keys. */
export const DigitPad = ({ digits, note }: { readonly digits: Digits; readonly note: Note }) => {
  const own = note.fingers?.[0]
  const words = fingeringText.pad
  return (
    <div
      className="row tight digit-pad"
      role="group"
      aria-label={words.title}
      onPointerDown={keepFocus}
    >
      <button type="button" aria-label={words.before} onClick={() => digits.go(-1)}>
        ←
      </button>
      {fingers.map((finger) => (
        <button
          key={finger}
          type="button"
          aria-label={words.finger(finger)}
          aria-pressed={finger === own}
          onClick={() => digits.write(finger)}
        >
          {finger}
        </button>
      ))}
      <button type="button" aria-label={words.takeAway} onClick={digits.takeAway}>
        ⌫
      </button>
      <button type="button" aria-label={words.next} onClick={() => digits.go(1)}>
        →
      </button>
    </div>
  )
}
