import { OTHER_ROLES, STRUCTURAL_ROLES, type Role } from './dieline.ts';
import { isKnife } from './knife-roles.ts';
import { wordsOf } from './names.ts';

/**
 * The words of the trade that name a line's role, by language. A word stands for itself; `rill*` stands for every word
 * that begins so; several words must follow one another. To add a language, add its words here and nowhere else.
 * Source: common practice of carton plants and the names of ISO 19593-1; no list of such words is standardised.
 */
type Words = Readonly<Partial<Record<Role, readonly string[]>>>;

const ENGLISH: Words = {
  Cutting: ['cut', 'cuts', 'cutting', 'cutline', 'cutlines', 'cutcontour', 'cutter', 'cutters', 'cutout', 'cutouts', 'throughcut', 'thrucut', 'knife', 'knives', 'knifeline', 'knifelines', 'blade', 'diecutting', 'slit', 'slits', 'slot', 'slots', 'hole', 'holes', 'hang hole', 'eurohole'],
  Creasing: ['crease', 'creases', 'creasing', 'creaseline', 'creaselines', 'fold', 'folds', 'foldline', 'foldlines', 'score', 'scores', 'scoring', 'scoreline', 'scorelines', 'bend', 'bendline'],
  Perforating: ['perf', 'perfs', 'perfo', 'perforat*', 'tear line', 'tearline', 'zipper line'],
  PartialCutting: ['half cut', 'halfcut', 'kiss cut', 'kisscut', 'partial cut', 'cut score', 'cutscore', 'partial cutting', 'scratch cut'],
  CuttingCreasing: ['cut crease', 'cutcrease', 'crease cut', 'cutting creasing'],
  ReverseCreasing: ['reverse crease', 'reverse creases', 'reverse score', 'reverse fold'],
  ReversePartialCutting: ['reverse half cut', 'reverse partial cut', 'reverse cut score', 'reverse kiss cut'],
  Gluing: ['glue', 'glues', 'gluing', 'glueing', 'adhesive', 'glue area', 'glue zone'],
  Bleed: ['bleed', 'bleeds', 'bleed line', 'bleedline'],
  VarnishFree: ['varnish free', 'no varnish', 'unvarnished', 'coating free'],
  InkFree: ['ink free', 'no ink', 'unprinted'],
  InkVarnishFree: ['ink varnish free', 'ink and varnish free'],
  Varnish: ['varnish', 'spot varnish', 'coating', 'spot uv'],
  White: ['opaque white', 'white ink', 'underprint white'],
  FoilStamping: ['foil', 'hot foil', 'foil stamping'],
  ColdFoilStamping: ['cold foil'],
  Embossing: ['emboss*', 'blind emboss'],
  Debossing: ['deboss*'],
  Drilling: ['drill', 'drills', 'drilling'],
  Punching: ['punch', 'punches', 'punching'],
  Stapling: ['staple', 'staples', 'stapling'],
  Braille: ['braille'],
  Dimensions: ['dim', 'dims', 'dimension', 'dimensions', 'dimensioning', 'measure', 'measures', 'measurement', 'measurements'],
  Legend: ['legend', 'title block', 'titleblock', 'frame', 'page frame', 'page border', 'notes', 'annotation', 'annotations', 'register mark', 'register marks', 'registration', 'registration marks', 'registration mark', 'crop mark', 'crop marks', 'cropmarks', 'trim marks', 'colour bar', 'color bar', 'centre line', 'center line', 'centerline', 'centreline', 'guides', 'grain', 'grain direction', 'safe', 'safe zone', 'safety', 'safe area', 'live area', 'type area', 'text', 'texts', 'info'],
  Positions: ['bar code', 'bar codes', 'barcode', 'barcodes', 'ean code', 'ean', 'qr code', 'data matrix', 'code area', 'batch code', 'best before'],
  Artwork: ['artwork', 'art', 'graphics', 'graphic', 'design', 'print', 'printing', 'image', 'images', 'logo', 'background', 'illustration', 'photo'],
};

const GERMAN: Words = {
  Cutting: ['schneid*', 'schnitt', 'schnitte', 'schnittlinie', 'schnittlinien', 'schnittkontur', 'messer', 'messerlinie', 'messerlinien', 'stanzlinie', 'stanzlinien', 'stanzkontur', 'stanzschnitt', 'durchschnitt', 'aussenkontur', 'innenkontur', 'konturschnitt', 'ausschnitt', 'ausschnitte', 'schlitz', 'schlitze', 'loch', 'locher', 'lochung', 'euroloch'],
  Creasing: ['rill*', 'nut', 'nuten', 'nutlinie', 'nutlinien', 'nutung', 'falz', 'falze', 'falzlinie', 'falzlinien', 'falzung', 'biegelinie', 'biegelinien', 'knick', 'knicklinie', 'faltlinie', 'faltlinien', 'falte'],
  Perforating: ['perforier*', 'perforation*', 'perfolinie', 'aufreisslinie', 'aufreissperforation', 'abriss', 'abrisslinie', 'aufreissfaden'],
  PartialCutting: ['ritz*', 'anritz*', 'halbschnitt', 'halbschnitte', 'anstanz*', 'teilschnitt', 'anschneiden'],
  CuttingCreasing: ['ritzrill*', 'stanzrill*', 'schneidrill*'],
  ReverseCreasing: ['gegenrill*', 'ruckrill*', 'wenderill*'],
  Gluing: ['kleben', 'klebung', 'klebeflache', 'klebeflachen', 'klebezone', 'klebstoff', 'klebspur', 'leim', 'leimung', 'leimflache', 'leimspur', 'verklebung', 'kleber'],
  Bleed: ['beschnitt', 'anschnitt', 'uberfuller', 'beschnittzugabe', 'druckbeschnitt'],
  VarnishFree: ['lackfrei', 'lackaussparung', 'lackfreie flache', 'ohne lack'],
  InkFree: ['farbfrei', 'druckfrei', 'unbedruckt'],
  InkVarnishFree: ['farb lackfrei', 'farb und lackfrei', 'druck und lackfrei'],
  Varnish: ['lack', 'spotlack', 'lackierung', 'uv lack'],
  White: ['deckweiss', 'weissdruck'],
  FoilStamping: ['folienpragung', 'heissfolie', 'heisspragung', 'goldpragung'],
  ColdFoilStamping: ['kaltfolie'],
  Embossing: ['pragung', 'blindpragung', 'hochpragung', 'relief'],
  Debossing: ['tiefpragung'],
  Drilling: ['bohr*'],
  Stapling: ['heftung', 'heftklammer'],
  Dimensions: ['masse', 'mass', 'bemassung', 'bemassungen', 'masslinie', 'masslinien', 'massangaben', 'vermassung'],
  Legend: ['legende', 'schriftfeld', 'rahmen', 'blattrahmen', 'seitenrahmen', 'zeichnungsrahmen', 'hinweise', 'passkreuz', 'passkreuze', 'passer', 'passermarken', 'passmarken', 'schneidmarken', 'schnittmarken', 'schnittmarke', 'schneidmarke', 'farbbalken', 'mittellinie', 'mittellinien', 'hilfslinien', 'laufrichtung', 'faserrichtung', 'faserlauf', 'beschriftung', 'sicherheitsabstand', 'sicherheitszone', 'sicherheitsbereich', 'schutzraum'],
  Positions: ['strichcode', 'strichcodes', 'codefeld', 'eindruckfeld', 'eindruckflache', 'chargenfeld', 'mindesthaltbarkeit'],
  Artwork: ['druckbild', 'grafik', 'druck', 'bild', 'bilder', 'motiv', 'hintergrund', 'gestaltung'],
};

const FRENCH: Words = {
  Cutting: ['decoupe', 'decoupes', 'decoupage', 'coupe', 'coupes', 'coupant', 'filet coupant', 'filets coupants', 'filet coupeur', 'couteau', 'couteaux', 'lame', 'lames', 'trace de coupe', 'contour de decoupe', 'fente', 'fentes', 'trou', 'trous'],
  Creasing: ['rainage', 'rainages', 'rainure', 'rainures', 'rainant', 'raineur', 'filet raineur', 'filets raineurs', 'refoulage', 'refoulages', 'refouleur', 'refoulement', 'pli', 'plis', 'pliage', 'pliure', 'pliures'],
  Perforating: ['perforation', 'perforations', 'perforeur', 'filet perforateur', 'predecoupe', 'ligne de dechirure', 'arrachage'],
  PartialCutting: ['mi chair', 'michair', 'mi coupe', 'demi coupe', 'demi chair', 'entaille'],
  CuttingCreasing: ['coupant rainant', 'coupe rainage', 'coupe pli'],
  ReverseCreasing: ['rainage inverse', 'pli inverse', 'contre rainage', 'refoulage inverse'],
  Gluing: ['colle', 'collage', 'encollage', 'zone de colle', 'zone de collage'],
  Bleed: ['fond perdu', 'fonds perdus', 'debord'],
  VarnishFree: ['sans vernis', 'reserve vernis', 'reserve de vernis', 'epargne vernis'],
  InkFree: ['sans encre', 'reserve encre', 'non imprime'],
  InkVarnishFree: ['sans encre ni vernis'],
  Varnish: ['vernis', 'vernis selectif'],
  White: ['blanc de soutien', 'blanc couvrant'],
  FoilStamping: ['dorure', 'dorure a chaud', 'marquage a chaud'],
  ColdFoilStamping: ['dorure a froid'],
  Embossing: ['gaufrage', 'embossage', 'relief'],
  Dimensions: ['cote', 'cotes', 'cotation', 'cotations', 'mesures'],
  Legend: ['legende', 'cartouche', 'cadre', 'cadre de page', 'repere', 'reperes', 'hirondelles', 'trait de coupe', 'traits de coupe', 'axe', 'axes', 'sens fibre', 'sens des fibres', 'sens du papier', 'texte', 'textes', 'annotation'],
  Positions: ['code barre', 'code barres', 'code a barres', 'codes a barres', 'gencod', 'zone de marquage'],
  Artwork: ['maquette', 'graphisme', 'visuel', 'impression', 'fond', 'images'],
};

const SPANISH: Words = {
  Cutting: ['corte', 'cortes', 'cortar', 'cortante', 'linea de corte', 'cuchilla', 'cuchillas', 'troquelado', 'contorno de corte', 'ranura', 'ranuras', 'agujero', 'agujeros'],
  Creasing: ['hendido', 'hendidos', 'hendedura', 'hendeduras', 'hendidura', 'hendiduras', 'plegado', 'plegados', 'pliegue', 'pliegues', 'doblez', 'dobleces', 'doblado', 'linea de pliegue'],
  Perforating: ['perforado', 'perforados', 'perforacion', 'perforaciones', 'puntillado', 'trepado', 'precorte'],
  PartialCutting: ['medio corte', 'semicorte', 'semi corte', 'medios cortes'],
  CuttingCreasing: ['corte hendido', 'corte pliegue', 'cortehendido'],
  ReverseCreasing: ['hendido inverso', 'pliegue inverso', 'hendido contrario'],
  Gluing: ['pegado', 'pegamento', 'encolado', 'zona de cola', 'zona de pegado', 'adhesivo'],
  Bleed: ['sangrado', 'sangre', 'sangria'],
  VarnishFree: ['sin barniz', 'reserva de barniz', 'libre de barniz'],
  InkFree: ['sin tinta', 'reserva de tinta', 'libre de tinta'],
  InkVarnishFree: ['sin tinta ni barniz'],
  Varnish: ['barniz', 'barnizado'],
  White: ['blanco de base', 'blanco cubriente'],
  FoilStamping: ['estampado', 'estampacion', 'stamping'],
  Embossing: ['gofrado', 'relieve', 'golpe en seco'],
  Drilling: ['taladro', 'taladrado'],
  Dimensions: ['cota', 'cotas', 'acotado', 'acotacion', 'acotaciones', 'medida', 'medidas', 'dimensiones'],
  Legend: ['leyenda', 'cajetin', 'marco', 'recuadro', 'cruces de registro', 'cruz de registro', 'marcas de corte', 'marcas de registro', 'lineas de eje', 'sentido de fibra', 'direccion de fibra', 'textos', 'texto', 'notas'],
  Positions: ['codigo de barras', 'codigos de barras', 'zona de codificacion'],
  Artwork: ['arte', 'diseno', 'grafica', 'graficos', 'impresion', 'imagen', 'fondo'],
};

const ITALIAN: Words = {
  Cutting: ['taglio', 'tagli', 'tagliente', 'taglienti', 'linea di taglio', 'linee di taglio', 'lama', 'tracciato di taglio', 'fessura', 'fessure', 'foro', 'fori'],
  Creasing: ['cordonatura', 'cordonature', 'cordone', 'cordoni', 'cordonato', 'cordonatore', 'cordonatori', 'piega', 'pieghe', 'piegatura', 'piegature', 'linea di piega'],
  Perforating: ['perforazione', 'perforazioni', 'perforatore', 'perforato', 'pretaglio', 'linea a strappo'],
  PartialCutting: ['mezzo taglio', 'mezzotaglio', 'mezzi tagli', 'semitaglio', 'incisione'],
  CuttingCreasing: ['taglio cordone', 'tagliocordone', 'taglia cordona', 'taglio e cordone alternato'],
  ReverseCreasing: ['cordone inverso', 'controcordone', 'controcordonatura', 'cordonatura inversa'],
  Gluing: ['colla', 'incollatura', 'incollaggio', 'zona colla', 'zona di colla'],
  Bleed: ['abbondanza', 'abbondanze', 'smarginatura', 'al vivo'],
  VarnishFree: ['senza vernice', 'riserva vernice', 'riserva di vernice'],
  InkFree: ['senza inchiostro', 'riserva inchiostro', 'riserva stampa'],
  InkVarnishFree: ['senza inchiostro e vernice'],
  Varnish: ['vernice', 'verniciatura'],
  White: ['bianco coprente', 'bianco di fondo'],
  FoilStamping: ['stampa a caldo', 'lamina a caldo', 'oro a caldo'],
  ColdFoilStamping: ['lamina a freddo'],
  Embossing: ['goffratura', 'rilievo', 'rilievo a secco'],
  Drilling: ['foratura'],
  Dimensions: ['quota', 'quote', 'quotatura', 'quotature', 'misura', 'misure', 'dimensioni'],
  Legend: ['legenda', 'cartiglio', 'cornice', 'squadratura', 'crocini', 'crocino', 'crocini di registro', 'segni di taglio', 'assi', 'senso fibra', 'direzione fibra', 'testi', 'testo', 'note'],
  Positions: ['codice a barre', 'codici a barre', 'zona codice'],
  Artwork: ['grafica', 'stampa', 'immagine', 'immagini', 'sfondo', 'progetto grafico'],
};

/** Names of the whole line work of a blank: cut if it is all of one kind, else they leave open what each line is. */
const WHOLE_DIELINE: readonly string[] = [
  'dieline', 'dielines', 'die line', 'die lines', 'die', 'diecut', 'die cut', 'keyline', 'keylines', 'cutter guide', 'cutterguide', 'line work', 'linework', 'blank', 'outline', 'outlines', 'contour', 'perimeter', 'trim line', 'trim',
  'stanze', 'stanzform', 'stanzriss', 'stanzzeichnung', 'stanzwerkzeug', 'stanz', 'kontur', 'zuschnitt', 'umriss', 'umrisse',
  'forme', 'forme de decoupe', 'trace technique', 'trace de decoupe', 'gabarit', 'silhouette',
  'troquel', 'troqueles', 'plano tecnico', 'trazado', 'contorno', 'silueta',
  'fustella', 'fustelle', 'tracciato', 'tracciato fustella', 'sagoma', 'profilo', 'perimetro',
];

/** Words that say that a name is of a part of the carton (`glue flap`, `Klebelasche`), not of a line's role. */
const PARTS: ReadonlySet<string> = new Set([
  'flap', 'flaps', 'tab', 'tabs', 'panel', 'panels', 'lid', 'side', 'window', 'lasche', 'laschen', 'klappe', 'klappen', 'deckel', 'seite', 'klebelasche',
  'klebelaschen', 'seitenwand', 'fenster', 'patte', 'pattes', 'rabat', 'rabats', 'panneau', 'volet', 'solapa', 'solapas', 'aleta', 'aletas',
  'tapa', 'lembo', 'lembi', 'aletta', 'alette', 'pannello', 'linguetta', 'falda', 'falde',
]);

export type NamedRole = Role | 'whole dieline';

interface Phrase {
  readonly words: readonly string[];
  readonly role: NamedRole;
}

/** Longest first, so that `half cut` comes before `cut`; of one length, the standard's own names first. */
const PHRASES: readonly Phrase[] = [
  ...[...STRUCTURAL_ROLES, ...OTHER_ROLES].filter((role) => role !== 'Unknown').map((role): Phrase => ({ words: wordsOf(role), role })),
  ...[ENGLISH, GERMAN, FRENCH, SPANISH, ITALIAN].flatMap((language) =>
    Object.entries(language).flatMap(([role, names]) => names.map((name): Phrase => ({ words: name.split(' '), role: role as Role }))),
  ),
  ...WHOLE_DIELINE.map((name): Phrase => ({ words: name.split(' '), role: 'whole dieline' })),
].sort((a, b) => b.words.length - a.words.length);

/** Phrases by their first word, exact ones and those with a star apart. */
const EXACT = new Map<string, Phrase[]>();
const STARRED: Phrase[] = [];
for (const phrase of PHRASES) {
  const [first] = phrase.words;
  if (first.endsWith('*')) STARRED.push(phrase);
  else EXACT.set(first, [...(EXACT.get(first) ?? []), phrase]);
}

/** Roles that a name of a part of the carton does not give, though its words do. */
const NOT_OF_PARTS: ReadonlySet<NamedRole> = new Set<NamedRole>(['Gluing', 'whole dieline', 'Legend', 'Artwork', 'Varnish']);

/** Roles that give way where the name gives another one too: `cutter guide frame` is of the cutter. */
const GIVE_WAY: readonly NamedRole[] = ['whole dieline', 'Legend', 'Artwork'];

/** `cut + crease`, `Stanz- und Rilllinien`: the name is of several kinds of line together. */
const JOINS: ReadonlySet<string> = new Set(['and', 'und', 'et', 'y', 'e']);

/** The role a name gives, or nothing where it gives none or several. */
export function roleOfName(name: string): NamedRole | undefined {
  const words = wordsOf(name);
  const found = new Set<NamedRole>();
  for (let i = 0; i < words.length; ) {
    const phrase = phraseAt(words, i);
    if (phrase) found.add(phrase.role);
    i += phrase?.words.length ?? 1;
  }
  if (words.some((word) => PARTS.has(word))) for (const role of NOT_OF_PARTS) found.delete(role);
  const isJoined = words.some((word) => JOINS.has(word)) && [...found].filter((role) => role === 'whole dieline' || isKnife(role)).length > 1;
  if (isJoined) return 'whole dieline';
  for (const role of GIVE_WAY) if (found.size > 1) found.delete(role);
  return found.size === 1 ? [...found][0] : undefined;
}

function phraseAt(words: readonly string[], at: number): Phrase | undefined {
  const fits = ({ words: wanted }: Phrase) => wanted.every((word, i) => words[at + i] === word);
  return EXACT.get(words[at])?.find(fits) ?? STARRED.find(({ words: [stem] }) => words[at].startsWith(stem.slice(0, -1)));
}
