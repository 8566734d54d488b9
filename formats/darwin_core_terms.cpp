// The terms that a column may stand for without being a character.
#include <string>
#include <unordered_set>

#include "keydrift/formats/darwin_core.hpp"
#include "keydrift/formats/side_table.hpp"

namespace keydrift::tables {
namespace {

// Folded, separated by blanks.
constexpr std::string_view kTerms =
    "acceptednameusage acceptednameusageid accessrights agentroleorder assertionby "
    "assertioneffectivedate assertionerror assertionid assertionmadedate assertionprotocols "
    "assertionreferences assertionremarks assertiontype assertionunit assertionvalue "
    "associatedmedia associatedoccurrences associatedorganisms associatedreferences "
    "associatedsequences associatedtaxa basisofrecord bed behavior bibliographiccitation "
    "caste catalognumber causeofdeath class collectioncode collectionid continent "
    "coordinateprecision coordinateuncertaintyinmeters country countrycode county "
    "cultivarepithet datageneralizations datasetid datasetname dateidentified day "
    "decimallatitude decimallongitude degreeofestablishment digitalspecimenid discipline "
    "disposition dynamicproperties earliestageorloweststage earliesteonorlowesteonothem "
    "earliestepochorlowestseries earliesteraorlowesterathem earliestperiodorlowestsystem "
    "enddayofyear establishmentmeans eventcategory eventdate eventid eventremarks eventtime "
    "eventtype family feedbackurl fieldnotes fieldnumber footprintspatialfit footprintsrs "
    "footprintwkt formation genericname genus geodeticdatum geologicalcontextid "
    "georeferencedby georeferenceddate georeferenceprotocol georeferenceremarks "
    "georeferencesources georeferenceverificationstatus group habitat higherclassification "
    "highergeography highergeographyid highestbiostratigraphiczone identificationid "
    "identificationqualifier identificationreferences identificationremarks "
    "identificationtype identificationverificationstatus identifiedby identifiedbyid "
    "individualcount informationwithheld infragenericepithet infraspecificepithet "
    "institutioncode institutionid isacceptedidentification island islandgroup kingdom "
    "language latestageorhigheststage latesteonorhighesteonothem latestepochorhighestseries "
    "latesteraorhighesterathem latestperiodorhighestsystem license lifestage "
    "lithostratigraphicterms locality locationaccordingto locationid locationname "
    "locationremarks lowestbiostratigraphiczone materialentitycategory materialentityid "
    "materialentityremarks materialentitytype materialsampleid maximumdepthinmeters "
    "maximumdistanceabovesurfaceinmeters maximumelevationinmeters measurementaccuracy "
    "measurementdeterminedby measurementdetermineddate measurementid measurementmethod "
    "measurementremarks measurementtype measurementunit measurementvalue member "
    "minimumdepthinmeters minimumdistanceabovesurfaceinmeters minimumelevationinmeters "
    "modified month municipality nameaccordingto nameaccordingtoid namepublishedin "
    "namepublishedinid namepublishedinyear nomenclaturalcode nomenclaturalstatus "
    "objectquantity objectquantitytype occurrenceid occurrenceremarks occurrencestatus order "
    "organismid organismname organismquantity organismquantitytype organismremarks "
    "organismscope originalnameusage originalnameusageid othercatalognumbers "
    "ownerinstitutioncode parenteventid parentmeasurementid parentnameusage parentnameusageid "
    "pathway phylum pointradiusspatialfit preferredspatialrepresentation preparations "
    "previousidentifications projectid projecttitle recordedby recordedbyid recordnumber "
    "references relatedresourceid relationshipaccordingto relationshipestablisheddate "
    "relationshipofresource relationshipofresourceid relationshipremarks "
    "reproductivecondition resourceid resourcerelationshipid rights rightsholder "
    "sampledsubstratecategory sampledsubstratelayer samplesizeunit samplesizevalue "
    "samplingeffort samplingprotocol scientificname scientificnameauthorship scientificnameid "
    "sex sitenumber specificepithet startdayofyear stateprovince storagelocation subfamily "
    "subgenus subtribe superfamily taxonconceptid taxonformula taxonid taxonomicstatus "
    "taxonrank taxonremarks tribe type typeoftype typestatus typifiedname "
    "verbatimassertiontype verbatimcoordinates verbatimcoordinatesystem verbatimdepth "
    "verbatimelevation verbatimeventdate verbatimidentification verbatimlabel "
    "verbatimlatitude verbatimlocality verbatimlongitude verbatimmeasurementtype verbatimsrs "
    "verbatimtaxonrank vernacularname verticaldatum vitality voucher waterbody year";

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
