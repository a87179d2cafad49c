/** How sensitive to light a thing is by what it is made of, as its record says it. */
import { governingClassOf, type LightClass } from './light-dose.ts';

export interface LightByMaterial {
  /** Of the most sensitive material that was read; null where none was. */
  readonly lightClass: LightClass | null;
  /** The words that settled it. */
  readonly because: readonly string[];
  /** Words that say nothing here: any of them may be the most sensitive. */
  readonly unread: readonly string[];
  /** Not settled by words: dyes, painted or gilt wood, anything unread. */
  readonly askConservator: boolean;
}

const CLOTH =
  '(?:silk|wool|woollen|cotton|linen|textiles?|cloth|felt|velvet|fabric|yarn|thread|jute|hemp|straw|feathers?|fur)';
const SUPPORT = '(?:canvas|linen|panel|board|wood|copper|oak|millboard|poplar)';

/** Phrases before words, so that gelatin silver is no metal; each is taken out of the text once read. */
const MATERIALS: readonly (readonly [lightClass: LightClass, pattern: RegExp, ask?: 'ask'])[] = [
  ['R0', /\bstained glass\b/g],
  ['R1', /\bundyed leather\b/g],
  ['R2', /\bdyed (?:leather|hide)\b/g],
  ['R3', new RegExp(String.raw`\bdyed(?: [a-z]+)? ${CLOTH}\b|\b${CLOTH},? dyed\b`, 'g'), 'ask'],
  ['R1', /\bdyed [a-z]+/g, 'ask'],
  ['R2', /\b(?:gelatin|salted) (?:silver|paper)(?: prints?)?|\balbumen prints?/g],
  [
    'R3',
    /\bc-types?\b|\bchromogenic(?: prints?)?|\bcolou?r(?:ed)? (?:photo(?:graph)?s?|prints?|slides?|transparenc\w+)/g,
  ],
  ['R1', new RegExp(String.raw`\b(?:oils?|tempera|acrylics?)(?: paint)? on ${SUPPORT}(?: ${SUPPORT})?`, 'g')],
  ['R0', /\b(?:vitreous )?enamel(?:led|s)?(?: on (?:metal|copper|iron|steel))?/g],
  ['R3', /\bsilks?\b|\bfugitive\b|\blakes?\b|\bnewsprint\b|\bnewspapers?\b|\bfelt[- ]tip\b|\banilines?\b/g],
  [
    'R3',
    /\bindigo\b|\bmadder\b|\bcochineal\b|\bkermes\b|\bbrazilwood\b|\blogwood\b|\bweld\b|\bsafflower\b|\bdyes?\b/g,
    'ask',
  ],
  // Which colours they are is not said, and the word settles nothing.
  ['R2', /\bhand[- ]colou?red\b|\bcolou?red wash(?:es)?\b|\bwash(?:es)?\b|\bstain(?:s|ed)\b/g, 'ask'],
  ['R2', /\bwatercolou?rs?\b|\bpastels?\b|\bgouache\b|\bprints?\b|\betchings?\b|\bengravings?\b|\blithographs?\b/g],
  [
    'R2',
    /\bwoodcuts?\b|\bdrawings?\b|\binks?\b|\bpaper\b|\bcard\b|\b(?:card|paste|mill)?board\b|\bmanuscripts?\b|\bvellum\b|\bparchment\b/g,
  ],
  [
    'R2',
    /\btextiles?\b|\btapestr\w+|\bcotton\b|\blinen\b|\bwool(?:len)?\b|\bembroider\w+|\blace\b|\bvelvet\b|\bcloth\b|\bfelt\b|\bcanvas\b/g,
  ],
  [
    'R2',
    /\bfurs?\b|\bfeathers?\b|\btaxiderm\w+|\bwallpapers?\b|\bphoto(?:graph)?s?\b|\bupholster\w+|\bbooks?\b|\bbasket\w*|\bstraw\b/g,
  ],
  [
    'R2',
    /\bfabrics?\b|\bcalico\b|\bmuslin\b|\bhemp\b|\bjute\b|\brope\b|\bcord\b|\btwine\b|\bthreads?\b|\byarns?\b|\bstring\b|\brush\b|\bcane\b|\braffia\b|\bswatch(?:es)?\b|\bcharcoal\b|\bgraphite\b|\bpencil\b|\bchalks?\b|\bcrayon\b|\bcollage\b/g,
  ],
  ['R1', /\b(?:painted|gilt|gilded|gilding|polychromed?|bole)\b/g, 'ask'],
  [
    'R1',
    /\boils?\b|\btempera\b|\bfresco\b|\bleather\b|\bhorn\b|\bbone\b|\bivory\b|\blacquer\w*|\bplastics?\b|\bacrylics?\b/g,
  ],
  [
    'R1',
    /\bwood(?:en)?\b|\boak\b|\bpear(?:wood)?\b|\bwalnut\b|\bmahogany\b|\bpine\b|\bdeal\b|\belm\b|\bbeech\b|\bash\b|\blime\b|\bwillow\b|\bpoplar\b/g,
  ],
  [
    'R1',
    /\b(?:hard|soft|fruit|box|rose|satin|ply)wood\b|\bsycamore\b|\bmaple\b|\bbirch\b|\balder\b|\bchestnut\b|\bcherry\b|\bcedar\b|\bebony\b|\bteak\b|\bfir\b|\bspruce\b|\blarch\b|\byew\b|\bholly\b|\bhazel\b|\bbamboo\b|\bcork\b|\bveneers?\b/g,
  ],
  ['R1', /\bwax\b|\bshellac\b|\bvarnish\w*|\bresins?\b|\bhair\b|\btortoiseshell\b|\bshells?\b|\brubber\b/g],
  [
    'R0',
    /\b(?:cast |wrought )?iron\b|\bsteel\b|\bbrass\b|\bcopper\b|\bbronze\b|\bsilver\b|\bgold\b|\bpewter\b|\btin(?:ned|plate)?\b|\bnickel\b|\balumini?um\b|\bchrome\b|\bwire\b|\bnails?\b|\bscrews?\b|\bzinc\b|\blead\b|\bmetals?\b/g,
  ],
  [
    'R0',
    /\bstone\b|\bgranite\b|\b(?:lime|sand)stone\b|\balabaster\b|\bclay\b|\bbricks?\b|\bconcrete\b|\bcement\b|\bmarble\b|\bslate\b|\bglass\b|\bceramics?\b|\bearthenware\b|\bstoneware\b|\bporcelain\b|\bterracotta\b|\btiles?\b|\bplaster\b/g,
  ],
];

/** Words of form, work, place and number: what a thing is made of is said by others beside them. */
const SAYS_NOTHING = new Set(
  [
    'a an and at by from for in its of on or over set the to under with inside outside inner outer upper lower each all',
    'frame framed hand hands handle lid base back front top rim edge edges side sides half halves part parts piece pieces',
    'carved cast cut wrought forged turned woven printed blown pressed moulded glazed beaten hammered raised folded bent',
    'riveted soldered welded joined nailed bound sewn stitched stamped engraved incised polished mounted backed lined',
    'strip strips rod rods bar bars band bands sheet sheets block blocks fittings fragments traces remains spirit binding',
    'dark light pale plain large small thin thick old new one two three four five six some',
  ].flatMap((words) => words.split(' ')),
);

/**
 * Light class of a thing from its materials as written (English), the most sensitive governing, and what was not read. It
 * never throws and never calls a thing insensitive that it did not wholly read: `askConservator` then. Source: CIE
 * 157:2004's examples, as read; dyed cloth is R3 until tested.
 */
export function lightClassOf(materials: string): LightByMaterial {
  let rest = materials.toLowerCase();
  const classes: LightClass[] = [];
  const found: (readonly [LightClass, string])[] = [];
  let ask = false;
  for (const [lightClass, pattern, asks] of MATERIALS) {
    rest = rest.replace(pattern, (words) => {
      classes.push(lightClass);
      found.push([lightClass, words]);
      ask ||= asks === 'ask';
      return ' ; ';
    });
  }
  const unread = [...new Set(rest.split(/[^\p{L}-]+/u))].filter((word) => word.length > 1 && !SAYS_NOTHING.has(word));
  const governing = governingClassOf(classes);
  return {
    lightClass: governing,
    because: found.filter(([lightClass]) => lightClass === governing).map(([, words]) => words),
    unread,
    askConservator: ask || governing === null || unread.length > 0,
  };
}
