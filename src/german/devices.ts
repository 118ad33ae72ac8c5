import type { DevicesText } from '@/text/devices'

export const devices: DevicesText = {
  looking: 'Ein Instrument wird gesucht …',
  unsupported: {
    short: 'Kein MIDI in diesem Browser',
    advice:
      'Dieser Browser hat kein Web MIDI. Chrome, Edge, Opera und Firefox auf einem Computer haben es, Chrome auch auf Android.',
  },
  denied: {
    short: 'MIDI nicht erlaubt',
    advice:
      'Dem Browser wurde gesagt, dass diese Seite MIDI nicht hören darf. In den Einstellungen der Website (das Zeichen neben der Adresse) erlauben und die Seite neu laden.',
  },
  failed: {
    short: 'MIDI gestört',
    advice: (detail) =>
      `MIDI ließ sich nicht öffnen: ${detail} Andere Programme schließen, die es benutzen, und die Seite neu laden.`,
  },
  unplugged: {
    short: 'Instrument nicht da',
    advice:
      'Das gewählte Instrument ist nicht eingesteckt. Einstecken, oder in den Einstellungen ein anderes wählen.',
  },
  taken: {
    short: 'Instrument belegt',
    advice: (name) =>
      `${name} wird von einem anderen Programm benutzt. Dort schließen: Dann ist es hier von selbst wieder zu hören.`,
  },
  alsoTaken: (heard, taken) => `${heard} (${taken} belegt)`,
  none: {
    short: 'Kein Instrument',
    advice: 'Das Instrument einschalten und über USB verbinden; es wird von selbst gefunden.',
  },
  otherWays: (white) =>
    `Bis dahin spielen die Tasten auf dem Bildschirm und die der Tastatur: ${white} … sind die weißen, die darüber die schwarzen.`,
  sound: {
    off: 'Der Ton ist aus: siehe Einstellungen.',
    blocked: 'Der Browser hält den Ton zurück: noch einmal klicken.',
    loading: (loaded, wanted) => `Das Klavier wird geladen: ${loaded} von ${wanted}`,
    none: (detail) => `Dieser Browser gibt keinen Ton: ${detail}`,
    noPiano: (detail) => `Der Klang des Klaviers ließ sich nicht laden: ${detail}`,
  },
}
