import type { FigureWords } from './figure-names.ts';

export const germanFigures: FigureWords = {
  names: {
    quantity: 'Auflage', sheets: 'Bogen', ups: 'Nutzen', 'sheet area': 'Bogenfläche', grammage: 'Flächengewicht', caliper: 'Kartondicke', 'blank area': 'Zuschnittfläche',
    board: 'Karton', 'board weight': 'Kartongewicht', 'board price': 'Kartonpreis', 'board per thousand': 'Karton je tausend', 'board yield': 'Kartonausnutzung', 'price per tonne': 'Preis je Tonne', 'pile height': 'Stapelhöhe',
    plates: 'Druckplatten', 'number of plates': 'Zahl der Druckplatten', 'plate price': 'Preis einer Druckplatte', die: 'Stanzform', 'die price': 'Preis der Stanzform',
    ink: 'Farbe', 'ink a colour': 'Farbmenge je Druckfarbe', coverage: 'Flächendeckung', 'ink coverage': 'Flächendeckung', 'ink film': 'Farbauftrag', 'ink price': 'Farbpreis', 'inked area': 'bedruckte Fläche', price: 'Preis',
    varnish: 'Lack', 'varnish on board': 'Lack auf Karton', 'varnish film': 'Lackauftrag', 'varnish price': 'Lackpreis', 'coated area': 'lackierte Fläche', film: 'Auftrag',
    makeready: 'Einrichtezeit', through: 'Durchlauf', speed: 'Geschwindigkeit', hours: 'Stunden', 'hourly rate': 'Stundensatz',
    'cartons per case': '{products} je Versandkarton', 'count given': 'angegebene Zahl', 'case length': 'Länge des Versandkartons', 'case length or cartons per case': 'Länge des Versandkartons oder {products} je Versandkarton', rows: 'Reihen', cases: 'Versandkartons',
    'cases per pallet': 'Versandkartons je Palette', 'cases per layer': 'Versandkartons je Lage', layers: 'Lagen', 'layers on a pallet': 'Lagen auf einer Palette', pallets: 'Paletten', 'pallet height': 'Palettenhöhe', deck: 'Leerpalette', 'case height': 'Höhe des Versandkartons',
    thickness: 'Dicke', 'thickness glued flat': 'Dicke flach geklebt', 'thickness at the seam': 'Dicke an der Klebenaht', 'thickness measured': 'gemessene Dicke', 'layers of board': 'Kartonlagen',
    'weight of one': 'Stückgewicht', 'weight given': 'angegebenes Gewicht', 'net weight': 'Nettogewicht', 'gross weight': 'Bruttogewicht', 'case weight': 'Gewicht eines Versandkartons', 'pallet weight': 'Gewicht einer Palette',
    'packing material': 'Packmaterial', 'packing per thousand': 'Packmaterial je tausend', 'case price': 'Preis eines Versandkartons', 'pallets bought': 'gekaufte Paletten', 'pallet price': 'Preis einer Palette', freight: 'Fracht', 'freight rate': 'Frachtsatz', 'freight per tonne': 'Fracht je Tonne', 'freight per pallet': 'Fracht je Palette',
    'carbon of the board': 'CO2 des Kartons', 'carbon of the waste': 'CO2 des Abfalls', factor: 'Faktor', cost: 'Kosten', 'cost per thousand': 'Kosten je tausend', margin: 'Aufschlag', 'price per thousand': 'Preis je tausend', form: 'Form', version: 'Sorte', design: 'Zuschnitt',
    'published German table': 'veröffentlichte deutsche Tabelle', 'invented demonstration rates': 'erfundene Vorführsätze',
  },
  machines: { press: 'Druckmaschine', coater: 'Lackiermaschine', 'foil press': 'Folienprägepresse', embosser: 'Prägepresse', 'die-cutter': 'Stanze', stripper: 'Ausbrechmaschine', gluer: 'Klebemaschine', packer: 'Packmaschine' },
  machineFigures: { hours: (machine) => `Stunden ${machine}`, rate: (machine) => `Stundensatz ${machine}`, speed: (machine) => `Geschwindigkeit ${machine}`, makeready: (machine) => `Einrichtezeit ${machine}` },
  rowOfCase: (thickness) => `Reihe im Versandkarton, nach ${thickness}`,
};
