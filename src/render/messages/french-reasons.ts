import type { ReasonWords } from './foreign-reasons.ts';

export const frenchReasons: ReasonWords = {
  'element-open': 'l’élément <{1}> n’est pas fermé ; la fin du fichier manque peut-être',
  'closes-nothing': 'un autre élément que celui qui est ouvert est fermé',
  'no-element': 'il ne contient aucun élément',
  'text-outside': 'du texte se trouve avant ou après le dessin',
  'two-drawings': 'deux dessins se suivent dans un même fichier',
  'attribute-twice': 'un élément porte deux fois l’attribut « {1} »',
  'attribute-form': 'un attribut n’est pas écrit sous la forme nom="valeur"',
  'entity-form': 'un & n’est pas suivi du nom d’un caractère',
  'comment-form': 'un commentaire n’est pas écrit sous la forme <!-- … -->',
  'bad-character': 'un caractère se trouve là où il n’en faut pas',
  'declaration-form': 'l’en-tête du fichier n’est pas écrit comme XML le veut',
  'ends-too-soon': 'le fichier s’arrête au milieu',

  'pdf-no-pages': 'il n’a pas de page, ou sa fin manque',
  'pdf-packing': 'son contenu est compressé par {1}, qui n’est pas lu ici',
  'pdf-stream': 'ce qui y est compressé est abîmé',
  'pdf-objects': 'ses objets sont abîmés ou ne sont pas à leur place',
  'pdf-endless': 'il contient une suite de chiffres ou de blancs sans fin',

  'quotes-open': 'un guillemet est ouvert et n’est pas fermé',
  'quotes-within': 'la cellule continue après le guillemet fermant',
  'table-empty': 'il n’y a rien dedans',
  'column-twice': 'la colonne {1} s’y trouve deux fois',
  'cells-too-many': '{1} cellules, mais {2} colonnes',

  'cannot-be-opened': 'elle ne peut pas y être ouverte',
  'read-only': 'elle ne peut être que lue',
  'no-rights': 'le droit manque',
  'disk-error': 'le disque lit ou écrit avec des erreurs',
  'content-damaged': 'son contenu est incohérent',
  'no-database': 'ce n’est plus une bibliothèque',
  'no-such-file': 'il n’est pas là',
  'is-a-folder': 'c’est un dossier',
  other: '« {1} »',
};
