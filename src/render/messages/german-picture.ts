import type { PictureWords } from './words.ts';

export const germanPicture: PictureWords = {
  title: (ups, size) => `${ups} Nutzen auf ${size}`,
  description: (designs, ups) => `Druckbogen von der Druckseite gesehen, Greiferkante unten, mit ${ups} nummerierten Nutzen von ${designs}.`,
  reelDescription: (designs, ups) => `Rollenabschnitt von der Druckseite gesehen, Laufrichtung nach rechts, mit ${ups} nummerierten Nutzen von ${designs}.`,
  gripperEdge: 'GREIFERKANTE',
  sideLay: 'SEITENANLAGE',
  machineDirection: 'LAUFRICHTUNG DER ROLLE',
  grain: 'Laufrichtung',
  knifeLimit: 'Messer bleiben innerhalb',
  inkLimit: 'Farbe bleibt innerhalb',
  waste: 'Abfall',
  bleed: 'Beschnitt',
  roles: {
    Cutting: 'Schnitt', PartialCutting: 'Anschnitt', ReversePartialCutting: 'Anschnitt von hinten', Creasing: 'Rillung', ReverseCreasing: 'Gegenrillung', CuttingCreasing: 'Ritzrillung', Perforating: 'Perforation',
    Gluing: 'Klebefläche', Bleed: 'Beschnitt', VarnishFree: 'lackfrei', InkFree: 'farbfrei', InkVarnishFree: 'farb- und lackfrei', Varnish: 'Lack', Unknown: 'Linie unbekannter Art',
  },
  keepOuts: { 'colour-bar': 'Kontrollstreifen', spoiled: 'beschädigt', label: 'Werksetikett', used: 'schon benutzt' },
};
