import type { PictureWords } from './words.ts';

export const frenchPicture: PictureWords = {
  title: (ups, size) => `${ups} poses sur ${size}`,
  description: (designs, ups) => `Feuille vue du côté imprimé, prise de pinces en bas, avec ${ups} poses numérotées de ${designs}.`,
  reelDescription: (designs, ups) => `Coupe d’une bobine vue du côté imprimé, sens machine vers la droite, avec ${ups} poses numérotées de ${designs}.`,
  gripperEdge: 'CÔTÉ PINCES',
  sideLay: 'TAQUET LATÉRAL',
  machineDirection: 'SENS MACHINE',
  grain: 'sens des fibres',
  knifeLimit: 'limite des filets coupants',
  inkLimit: 'limite de l’encre',
  waste: 'déchet',
  bleed: 'fond perdu',
  roles: {
    Cutting: 'coupe', PartialCutting: 'mi-chair', ReversePartialCutting: 'mi-chair verso', Creasing: 'rainage', ReverseCreasing: 'rainage inversé', CuttingCreasing: 'coupe-rainage', Perforating: 'perforation',
    Gluing: 'zone de collage', Bleed: 'fond perdu', VarnishFree: 'réserve de vernis', InkFree: 'réserve d’encre', InkVarnishFree: 'réserve d’encre et de vernis', Varnish: 'vernis', Unknown: 'trait de nature inconnue',
  },
  keepOuts: { 'colour-bar': 'barre de contrôle', spoiled: 'abîmé', label: 'étiquette papetier', used: 'déjà utilisé' },
};
