import type { PictureWords } from './words.ts';

export const englishPicture: PictureWords = {
  title: (ups, size) => `${ups} ups on ${size}`,
  description: (designs, ups) => `Press sheet seen from the printed side, gripper edge at the bottom, with ${ups} numbered stations of ${designs}.`,
  reelDescription: (designs, ups) => `Length of a reel seen from the printed side, its machine direction to the right, with ${ups} numbered stations of ${designs}.`,
  gripperEdge: 'GRIPPER EDGE',
  sideLay: 'SIDE LAY',
  machineDirection: 'MACHINE DIRECTION',
  grain: 'grain',
  knifeLimit: 'knives stay inside',
  inkLimit: 'ink stays inside',
  waste: 'waste',
  bleed: 'bleed',
  roles: {
    Cutting: 'cut',
    PartialCutting: 'partial cut',
    Creasing: 'crease',
    CuttingCreasing: 'cut-crease',
    Perforating: 'perforation',
    Gluing: 'glue area',
    Unknown: 'line of unknown kind',
  },
  keepOuts: {
    'colour-bar': 'colour bar',
    spoiled: 'spoiled',
    label: 'mill label',
    used: 'already used',
  },
};
