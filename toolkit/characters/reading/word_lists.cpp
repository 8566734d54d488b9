#include <algorithm>
#include <array>
#include <string_view>
#include <unordered_map>
#include <utility>

#include "keydrift/characters/reading/vocabulary.hpp"

namespace keydrift::reading {
namespace {

// Lists of folded words, separated by blanks.  All are common practice.

constexpr std::string_view kArticles =
    "a an the der das des dem den ein eine einer eines einem einen la le les un une el los las una "
    "um uma";

constexpr std::string_view kFunctionWords =
    "of with and or in on at to by from for into onto upon is are be being been was were as than "
    "that which whose their its his her each every all both only always invariably having has have "
    "bearing but also then thus so this these those there when where while if it they themselves "
    "other another own same per via within among against "
    "except excepting excluding save "
    "und oder mit von vom im in am an auf aus bei zu zum zur ist sind stets immer nur auch aber "
    "et ou avec de du d' dans sur par est sont toujours seulement mais "
    "y o u con en por es son siempre solo pero e com em do da dos no na nos nas sempre mas são "
    "vel aut seu sive cum semper sed";

constexpr std::string_view kOrs = "or oder ou vel aut seu sive";
constexpr std::string_view kAnds = "and und et";
constexpr std::string_view kOfs = "of von vom der des de du d' del";
constexpr std::string_view kWiths = "with having bearing mit avec con com cum";
constexpr std::string_view kCopulas = "is are be being was were ist sind est sont es son são";

constexpr std::string_view kPrepositions =
    "of with without in on at by from for into onto upon above below beneath under over along near "
    "between towards toward behind before after across around around through throughout when where "
    "if as than per within among against outside inside except mit ohne von im am an auf aus bei "
    "zu "
    "avec sans de dans sur par chez con sin en por com sem em nas nos cum sine";

// How much of a quality: alone they state nothing.
constexpr std::string_view kDegrees =
    "very rather quite somewhat slightly strongly weakly distinctly clearly plainly obviously "
    "conspicuously noticeably markedly deeply shallowly densely sparsely finely coarsely minutely "
    "broadly narrowly faintly fully entirely completely wholly partly evenly irregularly regularly "
    "abruptly gradually loosely closely prominently well much far considerably simply merely "
    "uniformly decidedly extremely exceedingly moderately relatively comparatively deutlich stark "
    "schwach sehr tief fein grob dicht très peu fortement faiblement nettement muy poco "
    "fuertemente "
    "muito pouco fortemente valde paulo leviter";

// Makes another part of the part behind it.
constexpr std::string_view kPositions =
    "upper lower uppermost lowermost lowest highest basal cauline radical inner outer innermost "
    "outermost lateral terminal central median middle front hind fore rear anterior posterior "
    "dorsal ventral apical distal proximal subapical subbasal first second third fourth fifth "
    "sixth "
    "seventh eighth ninth tenth last penultimate next male female sterile fertile staminate "
    "pistillate young old juvenile larval pupal adult primary secondary tertiary ray disc disk "
    "tubular inner left right opposite adjacent submersed submerged floating aerial emergent "
    "1st 2nd 3rd 4th 5th 6th 7th 8th 9th 10th untere obere mittlere innere äussere inférieur "
    "supérieur inferior superior";

// Parts of organisms: an unknown one beside a known one makes another structure ("leaf sheath").
constexpr std::string_view kPartWords =
    // plants
    "plant herb shrub tree stem culm haulm shoot branch twig trunk bark root rhizome stolon runner "
    "tuber bulb corm bud leaf leaflet frond blade lamina sheath ligule auricle petiole stipule "
    "rachis "
    "rhachis pinna pinnule margin edge midrib vein nerve tip apex base surface underside upperside "
    "tooth lobe sinus hair bristle spine thorn prickle scale gland pore dot stripe spot band ring "
    "inflorescence panicle raceme spike spikelet umbel cyme corymb head capitulum catkin cone "
    "whorl "
    "peduncle pedicel bract bracteole involucre phyllary receptacle flower floret calyx sepal "
    "corolla petal tepal perianth lip tube throat limb spur standard wing keel stamen filament "
    "anther pollen pollinium style stigma ovary carpel pistil ovule placenta nectary fruit capsule "
    "pod legume silique achene nut nutlet drupe berry pome follicle caryopsis grain utricle beak "
    "awn "
    "pappus seed aril testa embryo cotyledon glume lemma palea lodicule spore sorus indusium "
    "sporangium sporophyte seta calyptra peristome gametophyte thallus cap gill stipe veil volva "
    "annulus hypha cystidium basidium ascus "
    // animals
    "body head face frons vertex gena clypeus labrum mandible maxilla palp palpus labium proboscis "
    "rostrum snout muzzle nostril eye ocellus eyelid ear tympanum antenna antennule flagellum "
    "scape "
    "pedicel club arista thorax prothorax mesothorax metathorax pronotum mesonotum metanotum notum "
    "scutum scutellum pleuron sternum sternite tergum tergite segment somite article joint abdomen "
    "gaster petiole propodeum elytron wing forewing hindwing haltere tegula cell vein interval "
    "stria "
    "puncture leg coxa trochanter femur tibia tarsus tarsomere claw arolium pulvillus spur comb "
    "genitalia aedeagus paramere ovipositor cercus gonopod gonopore carapace telson uropod pleopod "
    "pereopod pereiopod maxilliped chela cheliped dactylus propodus carpus merus ischium areola "
    "pleon antennomere shell whorl spire aperture umbilicus operculum columella suture hinge valve "
    "foot mantle tentacle arm disc ray fin dorsal pectoral pelvic anal caudal barbel gill "
    "operculum "
    "opercle scale lateral line jaw tooth tongue palate throat chin belly back flank side tail "
    "neck "
    "crest mane horn antler hoof digit finger toe web pad thumb limb skin fur feather bill primary "
    "rump crown collar stripe plate shield vent cloaca skull molar incisor canine premolar cusp "
    "proloculus chamber septum test radula polyp corallite osculum spicule zooid avicularium";

constexpr std::string_view kLabelledParts =
    "segment segments tergite tergites sternite sternites vein veins article articles antennomere "
    "antennomeres interval intervals pereopod pereopods pereiopod pereiopods pleopod pleopods "
    "somite somites leg legs joint joints stria striae tarsomere tarsomeres cell cells abdominal "
    "whorl row primary primaries ring instar t s";

// What keys of animals number along the body, the antenna, the leg, the wing or the hand.  Cells,
// rows and whorls are left out: plants have them in numbers, and keys count those.
constexpr std::string_view kNumberedParts =
    "tergite tergites tergum terga sternite sternites segment segments somite somites pleonite "
    "pleonites pereonite pereonites peraeonite peraeonites urite urites urosomite urosomites "
    "metamere metameres setiger setigers chaetiger chaetigers flagellomere flagellomeres "
    "antennomere antennomeres tarsomere tarsomeres metatarsomere metatarsomeres palpomere "
    "palpomeres article articles joint joints vein veins interval intervals stria striae leg legs "
    "coxa coxae trochanter trochanters femur femora patella patellae tibia tibiae tarsus tarsi "
    "metatarsus metatarsi pereopod pereopods pereiopod pereiopods peraeopod peraeopods pleopod "
    "pleopods finger fingers toe toes digit digits primary primaries "
    "tergit tergite tergiten sternit sternite sterniten segmente segmenten glied glieder gliedern "
    "fühlerglied fühlerglieder fühlergliedern antennenglied antennenglieder antennengliedern "
    "tarsenglied tarsenglieder tarsengliedern fußglied fußglieder bein beine beinen "
    "antennomère antennomères tarsomère tarsomères flagellomère flagellomères palpomère palpomères "
    "patte pattes nervure nervures fémur fémurs "
    "terguito terguitos esternito esternitos segmento segmentos artejo artejos antenómero "
    "antenómeros tarsómero tarsómeros pata patas tergito tergitos antenômero antenômeros "
    "tarsômero tarsômeros flagelômero flagelômeros artículo artículos";

constexpr std::string_view kAbbreviations =
    "ca c cf aff eg ie e g i viz vs subsp ssp var subvar f fo forma cv nothosp sect subg subgen "
    "ser "
    "fig figs pl pls tab abb taf no nos nr st mt approx resp syn auct emend nov prof dr excl exc "
    "incl max min av avg subfam fam bzw z usw d h u sog m n s w r l p pp";
constexpr std::string_view kSoftAbbreviations =
    "sp spp diam etc al agg str lat long lg br alt ft in cm mm dm km µm ed b a o";

constexpr std::string_view kFigures =
    "fig figs figure figures pl pls plate plates abb abbildung abbildungen taf tafel tafeln photo "
    "photos illustration illustrations planche planches figura figuras lám рис рисунок";

struct Numeral {
  std::string_view word;
  double value;
};
constexpr std::array kNumerals{
    Numeral{"one", 1},       Numeral{"two", 2},        Numeral{"three", 3},
    Numeral{"four", 4},      Numeral{"five", 5},       Numeral{"six", 6},
    Numeral{"seven", 7},     Numeral{"eight", 8},      Numeral{"nine", 9},
    Numeral{"ten", 10},      Numeral{"eleven", 11},    Numeral{"twelve", 12},
    Numeral{"thirteen", 13}, Numeral{"fourteen", 14},  Numeral{"fifteen", 15},
    Numeral{"sixteen", 16},  Numeral{"twenty", 20},    Numeral{"zwei", 2},
    Numeral{"drei", 3},      Numeral{"vier", 4},       Numeral{"fünf", 5},
    Numeral{"sechs", 6},     Numeral{"acht", 8},       Numeral{"zehn", 10},
    Numeral{"deux", 2},      Numeral{"trois", 3},      Numeral{"quatre", 4},
    Numeral{"cinq", 5},      Numeral{"dos", 2},        Numeral{"tres", 3},
    Numeral{"cuatro", 4},    Numeral{"cinco", 5},      Numeral{"seis", 6},
    Numeral{"dois", 2},      Numeral{"duas", 2},       Numeral{"três", 3},
    Numeral{"quatro", 4},    Numeral{"duo", 2},        Numeral{"tria", 3},
    Numeral{"single", 1},    Numeral{"seventeen", 17}, Numeral{"eighteen", 18},
    Numeral{"nineteen", 19}, Numeral{"thirty", 30},    Numeral{"forty", 40},
    Numeral{"fifty", 50},    Numeral{"sieben", 7},     Numeral{"neun", 9},
    Numeral{"elf", 11},      Numeral{"zwölf", 12},     Numeral{"sept", 7},
    Numeral{"huit", 8},      Numeral{"neuf", 9},       Numeral{"dix", 10},
    Numeral{"onze", 11},     Numeral{"douze", 12},     Numeral{"siete", 7},
    Numeral{"ocho", 8},      Numeral{"nueve", 9},      Numeral{"diez", 10},
    Numeral{"doce", 12},     Numeral{"sete", 7},       Numeral{"oito", 8},
    Numeral{"nove", 9},      Numeral{"dez", 10},       Numeral{"doze", 12},
    Numeral{"quattuor", 4},  Numeral{"quinque", 5},    Numeral{"septem", 7},
    Numeral{"octo", 8},      Numeral{"novem", 9},      Numeral{"decem", 10},
    Numeral{"duodecim", 12},
};

// "one third", "two-thirds", "three-quarters"
struct Denominator {
  std::string_view words;
  double value;
};
constexpr std::array kDenominators{
    Denominator{"half halves", 2},      Denominator{"third thirds", 3},
    Denominator{"quarter quarters", 4}, Denominator{"fourth fourths", 4},
    Denominator{"fifth fifths", 5},     Denominator{"sixth sixths", 6},
    Denominator{"eighth eighths", 8},   Denominator{"tenth tenths", 10},
};

struct Dimension {
  std::string_view words;
  std::string_view name;
  int comparative;
};
constexpr std::array kDimensions{
    Dimension{"long length lengths lang länge longue longues longs longueur longo "
              "longa longos longas longitud comprimento longus longum longi longae",
              "length", 0},
    Dimension{"longer länger", "length", 1},
    Dimension{"shorter kürzer", "length", -1},
    Dimension{"wide broad width breadth breit breite largeur ancho ancha anchos "
              "anchas anchura largura latus latum",
              "width", 0},
    Dimension{"wider broader breiter", "width", 1},
    Dimension{"narrower schmaler", "width", -1},
    Dimension{"high tall height hoch höhe haut haute hauts hautes hauteur "
              "alto alta altos altas altura altus altum",
              "height", 0},
    Dimension{"higher taller höher", "height", 1},
    Dimension{"diam diameter diameters durchmesser diamètre diámetro diâmetro", "diameter", 0},
    Dimension{"thick thickness dick dicke épais grueso espesso", "thickness", 0},
    Dimension{"thicker dicker", "thickness", 1},
    Dimension{"thinner dünner", "thickness", -1},
    Dimension{"deep depth", "depth", 0},
    Dimension{"deeper", "depth", 1},
    Dimension{"shallower", "depth", -1},
    Dimension{"area fläche", "area", 0},
    Dimension{"angle winkel", "angle", 0},
    Dimension{"larger bigger", "size", 1},
    Dimension{"smaller", "size", -1},
};

template <class Use>
constexpr void each_word(std::string_view words, Use const& use) {
  while (!words.empty()) {
    auto const blank = words.find(' ');
    use(words.substr(0, blank));
    if (blank == std::string_view::npos) return;
    words.remove_prefix(blank + 1);
  }
}

using Table = std::unordered_map<std::string_view, WordInfo>;

Table make_table() {
  Table table;
  auto const mark = [&](std::string_view words, std::uint32_t classes) {
    each_word(words, [&](std::string_view word) { table[word].classes |= classes; });
  };
  mark(kArticles, kArticle | kFunction);
  mark(kFunctionWords, kFunction);
  mark(kOrs, kOr | kFunction);
  mark(kAnds, kAnd | kFunction);
  mark("to", kTo | kFunction);
  mark(kOfs, kOf | kFunction);
  mark(kWiths, kWith | kFunction);
  mark(kCopulas, kCopula | kFunction);
  mark(kPrepositions, kPreposition);
  mark(kDegrees, kDegree);
  mark(kPositions, kPosition);
  mark(kPartWords, kPart);
  mark(kLabelledParts, kLabelled);
  mark(kNumberedParts, kNumbered);
  mark(kAbbreviations, kAbbreviation);
  mark(kSoftAbbreviations, kSoftAbbreviation);
  mark(kFigures, kFigure);
  for (auto const& [word, value] : kNumerals) {
    table[word].classes |= kNumeral;
    table[word].numeral = value;
  }
  for (auto const& [words, name, comparative] : kDimensions) {
    each_word(words, [&, dimension = name, sign = comparative](std::string_view word) {
      table[word].dimension = dimension;
      table[word].comparative = sign;
    });
  }
  return table;
}

// Words that join or span in one language and mean something else in others.
struct LocalWord {
  std::string_view language;
  std::string_view word;
  std::uint32_t classes;
};
constexpr std::array kLocalWords{
    LocalWord{"es", "o", kOr | kFunction},      LocalWord{"es", "u", kOr | kFunction},
    LocalWord{"es", "y", kAnd | kFunction},     LocalWord{"es", "e", kAnd | kFunction},
    LocalWord{"es", "a", kTo | kFunction},      LocalWord{"pt", "e", kAnd | kFunction},
    LocalWord{"pt", "a", kTo | kFunction},      LocalWord{"fr", "à", kTo | kFunction},
    LocalWord{"de", "bis", kTo | kFunction},    LocalWord{"de", "die", kArticle | kFunction},
    LocalWord{"pt", "o", kArticle | kFunction}, LocalWord{"pt", "os", kArticle | kFunction},
    LocalWord{"la", "ad", kTo | kFunction},
};

// Dimensions that are others elsewhere: "largo" is long in Spanish and wide in Portuguese.
struct LocalDimension {
  std::string_view language;
  std::string_view words;
  std::string_view name;
};
constexpr std::array kLocalDimensions{
    LocalDimension{"fr", "large larges", "width"},
    LocalDimension{"es", "largo larga largos largas", "length"},
    LocalDimension{"pt", "largo larga largos largas", "width"},
    LocalDimension{"la", "lata lati latae", "width"},
};

}  // namespace

bool is_article(std::string_view folded) {
  // Asked of every word: most are none by their first letter alone.
  static constexpr std::size_t count = [] {
    std::size_t words = 0;
    each_word(kArticles, [&](std::string_view) { ++words; });
    return words;
  }();
  static constexpr auto articles = [] {
    std::array<std::string_view, count> list{};
    std::size_t filled = 0;
    each_word(kArticles, [&](std::string_view word) { list[filled++] = word; });
    return list;
  }();
  static constexpr auto beginnings = [] {
    std::array<bool, 256> begins{};
    for (auto const article : articles) begins[static_cast<unsigned char>(article.front())] = true;
    return begins;
  }();
  return !folded.empty() && beginnings[static_cast<unsigned char>(folded.front())] &&
         std::find(articles.begin(), articles.end(), folded) != articles.end();
}

double denominator(std::string_view folded) {
  for (auto const& [words, value] : kDenominators) {
    bool found = false;
    each_word(words, [&](std::string_view word) { found = found || word == folded; });
    if (found) return value;
  }
  return 0;
}

WordInfo word_info(std::string_view folded, std::string_view language) {
  static Table const table = make_table();
  WordInfo info;
  if (auto const found = table.find(folded); found != table.end()) info = found->second;
  if (!language.empty() && language.substr(0, 2) != "en") {
    auto const primary = language.substr(0, language.find('-'));
    for (auto const& local : kLocalDimensions) {
      if (local.language != primary) continue;
      each_word(local.words, [&](std::string_view word) {
        if (word == folded) info.dimension = local.name;
      });
    }
  }
  if (folded.size() <= 3 && !language.empty()) {
    auto const primary = language.substr(0, language.find('-'));
    for (auto const& local : kLocalWords) {
      if (local.word == folded && local.language == primary) {
        info.classes = (info.classes & ~std::uint32_t{kArticle}) | local.classes;
      }
    }
  }
  // "leaves", "sheaths": parts are listed in the singular.
  if (!info.is(kPart) && !info.is(kFunction)) {
    auto const one = singular(folded);
    if (one != folded) {
      if (auto const found = table.find(one); found != table.end() && found->second.is(kPart)) {
        info.classes |= kPart;
      }
    }
  }
  return info;
}

}  // namespace keydrift::reading
