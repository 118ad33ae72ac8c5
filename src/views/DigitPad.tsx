import { fingers } from '@/music/fingers'
import type { Note } from '@/music/music'
import { keepFocus } from './shortcuts'
import type { Digits } from './useDigitKeys'

/** The digits as buttons, for a tablet: the same as the keys. */
export const DigitPad = ({ digits, note }: { readonly digits: Digits; readonly note: Note }) => {
  const own = note.fingers?.[0]
  return (
    <div
      className="row tight digit-pad"
      role="group"
      aria-label="Finger of this note"
      onPointerDown={keepFocus}
    >
      <button type="button" aria-label="The note before" onClick={() => digits.go(-1)}>
        ←
      </button>
      {fingers.map((finger) => (
        <button
          key={finger}
          type="button"
          aria-label={`Finger ${finger}`}
          aria-pressed={finger === own}
          onClick={() => digits.write(finger)}
        >
          {finger}
        </button>
      ))}
      <button type="button" aria-label="Take the digit away" onClick={digits.takeAway}>
        ⌫
      </button>
      <button type="button" aria-label="The next note" onClick={() => digits.go(1)}>
        →
      </button>
    </div>
  )
}
