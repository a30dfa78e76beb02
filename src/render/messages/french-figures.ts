import type { FigureWords } from './figure-names.ts';

export const frenchFigures: FigureWords = {
  names: {
    quantity: 'tirage', sheets: 'feuilles', ups: 'poses', 'sheet area': 'surface de la feuille', grammage: 'grammage', caliper: 'épaisseur du carton', 'blank area': 'surface du flan',
    board: 'carton', 'board weight': 'poids du carton', 'board price': 'prix du carton', 'board per thousand': 'carton par mille', 'board yield': 'rendement du carton', 'price per tonne': 'prix par tonne', 'pile height': 'hauteur de pile',
    plates: 'plaques', 'number of plates': 'nombre de plaques', 'plate price': 'prix d’une plaque', die: 'forme de découpe', 'die price': 'prix de la forme de découpe',
    ink: 'encre', 'ink a colour': 'encre par couleur', coverage: 'couverture', 'ink coverage': 'couverture d’encre', 'ink film': 'charge d’encre', 'ink price': 'prix de l’encre', 'inked area': 'surface encrée', price: 'prix',
    varnish: 'vernis', 'varnish on board': 'vernis sur carton', 'varnish film': 'charge de vernis', 'varnish price': 'prix du vernis', 'coated area': 'surface vernie', film: 'charge',
    makeready: 'calage', through: 'passage', speed: 'vitesse', hours: 'heures', 'hourly rate': 'taux horaire',
    'cartons per case': '{products} par caisse', 'count given': 'nombre donné', 'case length': 'longueur de la caisse', 'case length or cartons per case': 'longueur de la caisse ou {products} par caisse', rows: 'rangées', cases: 'caisses',
    'cases per pallet': 'caisses par palette', 'cases per layer': 'caisses par couche', layers: 'couches', 'layers on a pallet': 'couches sur une palette', pallets: 'palettes', 'pallet height': 'hauteur de palette', deck: 'palette vide', 'case height': 'hauteur de la caisse',
    thickness: 'épaisseur', 'thickness glued flat': 'épaisseur collé à plat', 'thickness at the seam': 'épaisseur au joint collé', 'thickness measured': 'épaisseur mesurée', 'layers of board': 'couches de carton',
    'weight of one': 'poids unitaire', 'weight given': 'poids donné', 'net weight': 'poids net', 'gross weight': 'poids brut', 'case weight': 'poids d’une caisse', 'pallet weight': 'poids d’une palette',
    'packing material': 'emballage', 'packing per thousand': 'emballage par mille', 'case price': 'prix d’une caisse', 'pallets bought': 'palettes achetées', 'pallet price': 'prix d’une palette', freight: 'transport', 'freight rate': 'tarif de transport', 'freight per tonne': 'transport par tonne', 'freight per pallet': 'transport par palette',
    'carbon of the board': 'CO2 du carton', 'carbon of the waste': 'CO2 de la gâche', factor: 'facteur', cost: 'coût', 'cost per thousand': 'coût par mille', margin: 'marge', 'price per thousand': 'prix par mille', form: 'forme', version: 'version', design: 'modèle',
    'published German table': 'barème allemand publié', 'invented demonstration rates': 'tarifs de démonstration inventés',
  },
  machines: { press: 'presse', coater: 'vernisseuse', 'foil press': 'presse à dorer', embosser: 'presse à gaufrer', 'die-cutter': 'platine de découpe', stripper: 'décortiqueuse', gluer: 'plieuse-colleuse', packer: 'encaisseuse' },
  machineFigures: { hours: (machine) => `heures ${machine}`, rate: (machine) => `taux horaire ${machine}`, speed: (machine) => `vitesse ${machine}`, makeready: (machine) => `calage ${machine}` },
  rowOfCase: (thickness) => `rangée d’une caisse, selon ${thickness}`,
};
