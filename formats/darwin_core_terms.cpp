// The terms that a column may stand for without being a character.
#include <string>
#include <unordered_set>

#include "keydrift/formats/darwin_core.hpp"
#include "keydrift/formats/side_table.hpp"

namespace keydrift::tables {
namespace {

// Folded, separated by blanks.
constexpr std::string_view kTerms =
    "acceptednameusage acceptednameusageid accessrights associatedmedia associatedoccurrences "
    "associatedorganisms associatedreferences associatedsequences associatedtaxa "
    "basisofrecord bed behavior bibliographiccitation caste catalognumber class "
    "collectioncode collectionid continent coordinateprecision coordinateuncertaintyinmeters "
    "country countrycode county cultivarepithet datageneralizations datasetid datasetname "
    "dateidentified day decimallatitude decimallongitude degreeofestablishment disposition "
    "dynamicproperties earliestageorloweststage earliesteonorlowesteonothem "
    "earliestepochorlowestseries earliesteraorlowesterathem earliestperiodorlowestsystem "
    "enddayofyear establishmentmeans eventdate eventid eventremarks eventtime eventtype "
    "family fieldnotes fieldnumber footprintspatialfit footprintsrs footprintwkt formation "
    "genericname genus geodeticdatum geologicalcontextid georeferencedby georeferenceddate "
    "georeferenceprotocol georeferenceremarks georeferencesources "
    "georeferenceverificationstatus group habitat higherclassification highergeography "
    "highergeographyid highestbiostratigraphiczone identificationid identificationqualifier "
    "identificationreferences identificationremarks identificationverificationstatus "
    "identifiedby identifiedbyid individualcount informationwithheld infragenericepithet "
    "infraspecificepithet institutioncode institutionid island islandgroup kingdom language "
    "latestageorhigheststage latesteonorhighesteonothem latestepochorhighestseries "
    "latesteraorhighesterathem latestperiodorhighestsystem license lifestage "
    "lithostratigraphicterms locality locationaccordingto locationid locationname "
    "locationremarks lowestbiostratigraphiczone materialentityid materialentityremarks "
    "materialsampleid maximumdepthinmeters maximumdistanceabovesurfaceinmeters "
    "maximumelevationinmeters member minimumdepthinmeters minimumdistanceabovesurfaceinmeters "
    "minimumelevationinmeters modified month municipality nameaccordingto nameaccordingtoid "
    "namepublishedin namepublishedinid namepublishedinyear nomenclaturalcode "
    "nomenclaturalstatus occurrenceid occurrenceremarks occurrencestatus order organismid "
    "organismname organismquantity organismquantitytype organismremarks organismscope "
    "originalnameusage originalnameusageid othercatalognumbers ownerinstitutioncode "
    "parenteventid parentnameusage parentnameusageid pathway phylum pointradiusspatialfit "
    "preparations previousidentifications projectid projecttitle recordedby recordedbyid "
    "recordnumber references reproductivecondition rights rightsholder samplesizeunit "
    "samplesizevalue samplingeffort samplingprotocol scientificname scientificnameauthorship "
    "scientificnameid sex specificepithet startdayofyear stateprovince storagelocation "
    "subfamily subgenus subtribe superfamily taxonconceptid taxonid taxonomicstatus taxonrank "
    "taxonremarks tribe type typestatus verbatimcoordinates verbatimcoordinatesystem "
    "verbatimdepth verbatimelevation verbatimeventdate verbatimidentification verbatimlabel "
    "verbatimlatitude verbatimlocality verbatimlongitude verbatimsrs verbatimtaxonrank "
    "vernacularname verticaldatum vitality voucher waterbody year";

std::unordered_set<std::string_view> split(std::string_view words) {
  std::unordered_set<std::string_view> all;
  while (!words.empty()) {
    auto const blank = words.find(' ');
    all.insert(words.substr(0, blank));
    if (blank == std::string_view::npos) break;
    words.remove_prefix(blank + 1);
  }
  return all;
}

}  // namespace

bool is_darwin_core_term(std::string_view key) {
  static auto const terms = split(kTerms);
  return terms.contains(key);
}

CharacterHeader character_header(std::string_view header) {
  auto const whole = trimmed(header);
  if (whole.empty() || (whole.back() != ')' && whole.back() != ']'))
    return {std::string{whole}, ""};
  auto const open = whole.find_last_of(whole.back() == ')' ? '(' : '[');
  if (open == std::string_view::npos || open == 0) return {std::string{whole}, ""};
  return {std::string{trimmed(whole.substr(0, open))},
          std::string{trimmed(whole.substr(open + 1, whole.size() - open - 2))}};
}

}  // namespace keydrift::tables
