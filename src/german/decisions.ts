import type { DecisionsText } from '@/text/decisions'

export const decisions: DecisionsText = {
  problems: 'Probleme, und was dagegen getan wurde',
  problem: (flaw, key, onset, times) =>
    `${flaw}${key === undefined ? '' : ` bei ${key}`}, Anschlag ${onset}, ${times === 2 ? 'zweimal' : `${times}-mal`}`,
  remedies: {
    smallGroup: 'eine Dreiergruppe',
    oneHand: 'eine Hand allein',
    blocked: 'als Akkorde',
    loop: 'im Kreis um die Stelle',
    leapAlone: 'der Sprung allein',
    tapFirst: 'gezählt und geklopft',
    handsSlowly: 'beide Hände langsam',
    fingering: 'ein anderer Fingersatz',
    nameKeys: 'die Tasten laut benannt',
  },
  outcomes: {
    solved: 'gelöst',
    left: 'abgebrochen',
    helped: 'es kam nicht wieder',
    cameAgain: 'es kam wieder',
    none: 'weitergespielt',
  },
  overruled: 'Was Sie anders entschieden haben',
  overrules: {
    raise: 'ein schnelleres Tempo',
    lower: 'ein langsameres Tempo',
    skip: 'weitergegangen, bevor es fertig war',
    end: 'beendet, bevor es fertig war',
    pause: 'eine Pause nicht gemacht',
    problem: 'ein Problem ungelöst gelassen',
    smallerGroup: 'eine zu große Gruppe behalten',
    trial: 'eine Tempoprobe verlassen',
    tempoUp: 'ein schnelleres Tempo zurückgenommen',
    tempoDown: 'ein langsameres Tempo zurückgenommen',
    exercise: 'eine andere Übung als die nächste',
    remedy: 'eine Abhilfe verlassen, bevor es gelöst war',
  },
  times: (n) => `, ${n}-mal`,
}
