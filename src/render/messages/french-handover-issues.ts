import type { MessageTable } from './catalogue.ts';

/** Remarks on marks, artwork and backs of a handover. */
export const frenchHandoverIssues: MessageTable = {
  'artwork-bleed-missing': '{where} : au bord {edge}, sur {lengthMm} mm de ({fromX:mm}, {fromY:mm}) à ({toX:mm}, {toY:mm}) du flan, il manque {missingMm} mm des {bleedMm} mm de fond perdu. Prolongez l’impression jusque-là.',
  'artwork-text-near-knife': '{where} : le texte « {text} » en ({x:mm}, {y:mm}) du flan est à {mm} mm d’un filet coupant ; {leastMm} mm est le moins que tiennent impression et découpe.',
  'artwork-unread-text-near-knife': '{where} : un texte en ({x:mm}, {y:mm}) du flan est à {mm} mm d’un filet coupant ; {leastMm} mm est le moins que tiennent impression et découpe.',
  'artwork-area-near-knife': '{where} : ce qui est imprimé en ({x:mm}, {y:mm}) du flan s’arrête à {mm} mm d’un filet coupant. Tenez {leastMm} mm, ou prolongez à travers le fond perdu.',
  'artwork-font-missing': '{where} : la police {font} n’est pas dans le fichier. Le texte reste tel quel, et un autre programme peut le composer autrement. Incorporez la police ou vectorisez les textes.',
  'artwork-holds-die-line': '{where} contient le tracé de découpe. Les calques qui le disent sont éteints ; une couleur d’accompagnement est laissée de côté par le prépresse.',
  'artwork-missing': '{design} n’a pas de maquette ; ses poses restent vides.',
  'artwork-not-looked-at': '{where} contient plus qu’on ne lit d’un dessin : fond perdu et textes sont contrôlés d’après la page seule.',
  'mark-without-room-register': 'Croix de repérage : {side}, pas de place de chaque côté hors des flans, du fond perdu et de la barre. Portez les marges latérales à 8 mm ou plus.',
  'mark-without-room-side-lay': 'Marque du taquet latéral : {side}, il n’y a pas 2 × 8 mm au bord du taquet.',
  'mark-without-room-centre-gripper': 'Marque du milieu côté pinces : {side}, pas de place entre la limite de l’encre et le premier fond perdu.',
  'mark-without-room-centre-tail': 'Marque du milieu en queue : {side}, pas de place entre le dernier fond perdu et la limite de l’encre.',
  'mark-without-room-print-to-cut': 'Marques impression-découpe : {side}, aucun filet droit n’a de place dans le déchet au-delà de son fond perdu.',
  'mark-without-room-sheet-id': 'Identité de la feuille : {side}, pas de place pour ses lettres dans le déchet.',
  'second-gripper-narrow': 'La queue du recto est prise pendant l’impression du verso, mais {foundMm} mm seulement y restent sans encre ; le côté pinces en tient {wantedMm:mm}. Portez la limite d’encre en queue à {wantedMm} mm, la marge avec elle.',
  'coating-without-free': '{design} ne nomme ni zone de collage, ni code, ni réserve de vernis : tout est verni. Si une patte est collée, nommez sa zone Gluing dans le dessin.',
};
