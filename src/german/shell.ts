import type { ShellText } from '@/text/shell'

export const shell: ShellText = {
  pages: 'Seiten',
  pieces: 'Stücke',
  today: 'Heute',
  session: 'Sitzung',
  review: 'Rückblick',
  options: 'Einstellungen',
  opening: 'Wird geöffnet …',
  recordTrouble: 'Mit der Aufzeichnung stimmt etwas nicht; Sie können weiterüben.',
  saveRecord: 'Aufzeichnung als Datei sichern',
  lost: {
    title: 'Hier ist nichts',
    how: (pieces) => [
      'Diese Adresse nennt ein Stück, das nicht auf diesem Gerät ist, oder eine Stelle, die es nicht hat. Bei den ',
      pieces('Stücken'),
      ' ist es zu wählen, oder seine Datei ist noch einmal zu laden: Die Aufzeichnung Ihres Übens bleibt erhalten und findet es wieder.',
    ],
  },
  adding: 'Die Tage werden zusammengezählt …',
  noPage: (why) => `Diese Seite ist nicht zu zeigen. ${why}`,
  again: 'Noch einmal versuchen',
  kept: {
    all: 'Ganz Passagework liegt auf diesem Gerät: Es geht auch ohne Netz.',
    newer: 'Eine neuere Fassung von Passagework ist da.',
    takeNewer: 'Jetzt übernehmen',
    failed: (detail) =>
      `Passagework ließ sich nicht für den Gebrauch ohne Netz aufbewahren (${detail}). Die Seite neu laden, um es wieder zu versuchen.`,
    incomplete: 'nicht alle Dateien kamen an',
  },
  licences: {
    title: 'Lizenzen',
    own: 'Passagework selbst ist frei unter der MIT-Lizenz. Es ist mit der Arbeit anderer gemacht, die unter diesen Lizenzen dabei ist.',
    reading: 'Wird gelesen …',
    unread: (detail) =>
      `Die Lizenzen sind nicht zu lesen: Sie kommen mit der fertig gebauten Seite. (${detail})`,
    credits: [
      'Klang des Klaviers: Salamander Grand Piano von Alexander Holm, unter der Lizenz CC BY 3.0 (https://creativecommons.org/licenses/by/3.0/), auf wenige Sekunden gekürzt.',
      'Noten: gestochen von Verovio (LGPL-3.0-or-later), in einer eigenen Datei, die ersetzt werden kann.',
      'Schrift: Source Serif 4 (SIL Open Font License 1.1).',
    ],
  },
}
