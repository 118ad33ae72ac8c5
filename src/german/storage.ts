import type { StorageText } from '@/text/storage'

const records = (n: number, what: string): string =>
  n === 1 ? `Ein Eintrag der Aufzeichnung ${what}` : `${n} Einträge der Aufzeichnung ${what}`

export const storage: StorageText = {
  problems: {
    unavailable: (message) =>
      `Dieser Browser bietet hier keine Datenbank (${message}), etwa in einem privaten Fenster. Üben können Sie; die Aufzeichnung hält nur, bis die Seite geschlossen wird: vorher als Datei sichern.`,
    blocked:
      'In einem anderen Fenster ist noch eine ältere Fassung dieser Seite offen und hält die Aufzeichnung fest. Üben können Sie: Schließen Sie jenes Fenster, dann wird auch gesichert, was Sie hier spielen.',
    newerVersion:
      'Die Aufzeichnung stammt von einer neueren Fassung des Programms und bleibt, wie sie ist. Was Sie hier spielen, hält nur, bis die Seite geschlossen wird: als Datei sichern, dann neu laden, um die neuere Fassung zu bekommen, und die Datei dort übernehmen.',
    replaced:
      'Eine neuere Fassung dieser Seite wurde in einem anderen Fenster geöffnet und hat die Aufzeichnung übernommen. Was Sie ab jetzt hier spielen, hält nur, bis die Seite geschlossen wird: als Datei sichern, dann dieses Fenster neu laden und die Datei übernehmen.',
    quota:
      'Auf diesem Datenträger ist kein Platz mehr für die Aufzeichnung. Platz schaffen oder die Aufzeichnung als Datei sichern: Was noch nicht gesichert ist, hält, bis die Seite geschlossen wird, und wird gesichert, sobald Platz ist.',
    moved:
      'Die Aufzeichnung lässt sich wieder sichern, und was Sie hier gespielt haben, ist gesichert. Laden Sie die Seite neu, um Ihre Stücke und die frühere Aufzeichnung zu sehen.',
    idTaken: (id) =>
      `Das Ereignis ${id} steht schon mit anderem Inhalt in der Aufzeichnung; jenes wurde behalten.`,
    memoryOnly: 'Die Aufzeichnung hält nur, bis die Seite geschlossen wird.',
    failed: (message) =>
      `Die Aufzeichnung ließ sich nicht lesen oder schreiben (${message}). Alle paar Sekunden wird es wieder versucht; was noch nicht gesichert ist, hält, bis die Seite geschlossen wird. Vor dem Neuladen als Datei sichern.`,
  },
  closed: 'sie ist geschlossen',
  unread: {
    newer: (n) =>
      `${records(n, n === 1 ? 'stammt' : 'stammen')} von einer neueren Fassung des Programms und ${n === 1 ? 'ist' : 'sind'} für diese nicht lesbar. Laden Sie die Seite neu, um die neuere zu bekommen.`,
    damaged: (n, why) =>
      `${records(n, n === 1 ? 'ist' : 'sind')} beschädigt und nicht lesbar. ${why} Alle anderen werden gelesen, und eine gesicherte Aufzeichnung enthält die beschädigten, wie sie sind.`,
    nothingDeleted: 'Nichts wurde gelöscht.',
  },
  line: {
    notJson: (message) => `Das ist kein JSON: ${message}.`,
    notAnEvent: 'Das ist kein Ereignis einer Aufzeichnung: Es nennt keine Version.',
    newerVersion: (version, known) =>
      `Das stammt von einer neueren Fassung des Programms (Version ${version} der Aufzeichnung; diese Fassung liest bis ${known}). Die neuere kann es lesen; nichts wurde geändert.`,
    unknownVersion: (version) => `Eine Version ${version} der Aufzeichnung gibt es nicht.`,
    wrongEvent: (message) => `Das ist kein Ereignis einer Aufzeichnung: ${message}.`,
    wrongField: (path, message) => `Das Feld ${path} ist nicht, wie es sein muss: ${message}.`,
  },
  shapes: {
    unreadable: 'nicht lesbar',
    empty: 'darf nicht leer sein',
    digits: 'müssen Ziffern von 1 bis 5 sein',
    fraction: 'muss ein Bruch sein wie „3_2“',
    base64: 'muss Base64 sein',
    tooLarge: 'steht für mehr als 32 MB',
    damagedBlock: 'der gepackte Teil ist beschädigt',
  },
  keeping: {
    unknown: 'Der Browser sagt nicht, ob er die Aufzeichnung auf Dauer behält.',
    promised: 'Der Browser behält die Aufzeichnung, bis Sie sie löschen.',
    notPromised: 'Der Browser löscht die Aufzeichnung vielleicht, wenn der Datenträger voll wird.',
  },
}
