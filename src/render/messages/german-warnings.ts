import type { englishWarnings } from './english-warnings.ts';

/** Warnungen des Pults. */
export const germanWarnings: Readonly<Record<keyof typeof englishWarnings, string>> = {
  'missing-production': 'Nicht unter den Dateien: {files}. Sie warten, bis geklärt ist, was oben steht.',
  'missing-quote': 'Nicht unter den Dateien: {files}. Unter Geld fehlt, was ein Angebot braucht.',
  'missing-customer-quote': 'Nicht unter den Dateien: {files}. Unter Geld ist noch ein Preis offen.',
  'save-those-there': 'Die {count} vorhandenen Dateien speichern',
  'save-those-there-into': 'Die {count} vorhandenen Dateien in „{folder}“ speichern',
  'files-saved-without': '{count} Dateien gespeichert. Nicht darunter: {files}.',
  'files-of-earlier': 'Von früher liegen noch im Ordner: {files}. Sie gehören nicht zu diesem Standbogen.',
  'files-called-off': 'Es wurde nichts gespeichert.',
  'files-standing': 'Im Ordner stehen schon, und nicht so, wie dieses Pult sie zuletzt schrieb: {files}.',
  'replace-files': 'Ersetzen',
  'leave-files': 'Nichts speichern',
  'issue-handover-unknown-rules': 'Was {lines} Linien von {design} sind ({metres} m auf dem Bogen), ist nicht bekannt, und ein Werkzeug darf nicht auf Verdacht gebaut werden. Sagen Sie es unter Zeichnung; die Standbögen werden dann neu gesucht.',
  'silent-engine': 'Der Strang des Rechenwerks, der liest, prüft und zeichnet, gibt seit {time} kein Lebenszeichen.',
  'silent-searcher': 'Die Suche gibt seit {time} kein Lebenszeichen.',
  'silent-helper': 'Der Strang des Rechenwerks, der Bogen vergleicht und den Rest füllt, gibt seit {time} kein Lebenszeichen.',
  'silent-planner': 'Der Strang des Rechenwerks, der Plätze und Formen verteilt, gibt seit {time} kein Lebenszeichen.',
  'silent-thread': 'Er arbeitet vielleicht lange, oder er steckt in einer Schleife. Abgebrochen wird er neu gestartet; Zeichnung, gefundene Standbögen und alles Getippte bleiben.',
  'start-anew': 'Abbrechen und neu starten',
  'wait-on': 'Weiter warten',
  'ask-again': 'Noch einmal fragen',
  'issue-engine-stopped': 'Sie haben den Strang abgebrochen, der hieran arbeitete. Was vorher gefunden war, ist noch da.',
};
