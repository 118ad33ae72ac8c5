import type { PiecesText } from '@/text/pieces'
import { counted } from './counted'

export const pieces: PiecesText = {
  title: 'Stücke',
  notebook: 'Notizbuch aller Stücke',
  search: 'Suchen',
  noneFound: 'In keinem Stück kommen alle diese Wörter vor.',
  found: (found, all) => `${found} von ${counted(all, 'Stück', 'Stücken')}`,
  opening: 'Die Stücke werden geöffnet …',
  removed: (title) => `„${title}“ ist entfernt. Die Aufzeichnung Ihres Übens daran bleibt.`,
  bring: {
    title: 'Ein eigenes Stück hinzufügen',
    how: (musicXml, midi) => [
      'Am besten sind Noten in MusicXML (',
      ...musicXml.flatMap((ending, i) => (i === 0 ? [ending] : [', ', ending])),
      '); ein Standard MIDI File (',
      midi,
      ') geht auch, am besten mit einer Spur für jede Hand. Irgendwo auf die Seite ziehen oder auswählen. Die Datei bleibt auf diesem Gerät.',
    ],
    choose: 'Datei wählen …',
    file: 'Datei eines Stücks',
  },
  make: {
    title: 'Ein eigenes Fragment',
    what: 'Ein paar Takte aus einem Heft, oder eine Übung, die Ihre Lehrkraft aufgeschrieben hat.',
    write: 'Fragment schreiben',
    record: 'Fragment einspielen',
  },
  row: {
    fromFile: (fileName) => `aus ${fileName}`,
    change: 'Ändern',
    changeOf: (title) => `${title} ändern`,
    title: 'Titel',
    rename: 'Umbenennen',
    remove: 'Entfernen …',
    removeOf: (title) => `${title} entfernen`,
    sure: (title) =>
      `„${title}“ und die Datei dazu von diesem Gerät entfernen? Die Aufzeichnung Ihres Übens daran bleibt und findet das Stück wieder, wenn Sie es wieder hinzufügen.`,
    removeIt: 'Entfernen',
    keepIt: 'Behalten',
  },
  edition: {
    choose: 'Eine bessere Ausgabe …',
    fileOf: (title) => `Datei einer besseren Ausgabe von ${title}`,
    replaceOf: (title) => `${title} ersetzen`,
    same: (file) => `„${file}“ hat durchweg dieselben Noten: die ganze Aufzeichnung gilt dafür.`,
    unpractised: (file) =>
      `Daran ist noch nichts geübt worden, also muss keine Aufzeichnung auf „${file}“ übergehen.`,
    carries: (practised, agreeing, file) => {
      const rest = practised - agreeing
      if (practised === 1)
        return agreeing === 1
          ? `Der eine geübte Ausschnitt hat in „${file}“ dieselben Noten; seine Aufzeichnung geht über.`
          : `Der eine geübte Ausschnitt hat in „${file}“ andere Noten. Seine Aufzeichnung bleibt, zählt dafür aber nicht.`
      if (agreeing === 0)
        return `Keiner von ${practised} geübten Ausschnitten hat in „${file}“ dieselben Noten. Die Aufzeichnung bleibt, zählt dafür aber nicht.`
      const [have, their] = agreeing === 1 ? ['hat', 'seine'] : ['haben', 'ihre']
      const held = `Von ${practised} geübten Ausschnitten ${have} ${agreeing} in „${file}“ dieselben Noten; ${their} Aufzeichnung geht über.`
      return rest === 0
        ? held
        : `${held} Die Aufzeichnung ${rest === 1 ? 'des anderen' : `der anderen ${rest}`} bleibt, zählt dafür aber nicht.`
    },
    replace: 'Ersetzen',
    keepOld: 'Die alte behalten',
  },
  parts: {
    label: 'Stimmen der Datei',
    taken: (count, names) =>
      `Die Datei hat ${counted(count, 'Stimme', 'Stimmen')}; genommen: ${names.join(', ')}`,
    unnamed: (number) => `Stimme ${number}`,
    choose: 'Stimmen zum Spielen',
    notes: (n) => counted(n, 'Note', 'Noten'),
    otherMusic:
      'Andere Stimmen sind andere Musik mit einer eigenen Aufzeichnung; die Aufzeichnung der jetzigen bleibt.',
    take: 'Diese nehmen',
  },
  problems: {
    yourPieces: 'Ihre Stücke',
    ofProgram: 'Dieses Stück ist beim Programm schon dabei.',
  },
  somePiece: 'Ein Stück',
}
