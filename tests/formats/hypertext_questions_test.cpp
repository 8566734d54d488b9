// Pages that set a numbered question, character or step over the leads of each couplet.

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <string_view>

#include "finding_text.hpp"
#include "keydrift/formats/edition_reader.hpp"
#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::one_line;
using test::sketch;

Edition read_questions(std::string_view page) {
  auto loaded = read_edition({.name = "key.html", .bytes = page});
  if (!loaded) {
    for (auto const& finding : loaded.findings) ADD_FAILURE() << one_line(finding);
    return {};
  }
  return std::move(loaded.value->edition);
}

bool has_note(Edition const& edition, std::string_view words) {
  return std::any_of(edition.notes.begin(), edition.notes.end(), [words](Note const& note) {
    return note.text.find(words) != std::string::npos;
  });
}

// How a page writes its couplets: '#' stands for the number, '?' for the question in `title`;
// '1' and '2' for the leads in `leads`, their ends included, behind a sign of a list or in a tag.
struct Form {
  std::string title;
  std::string leads;
  std::string before{};
  std::string behind{};
};

std::string put(std::string form, char sign, std::string_view words) {
  for (auto at = form.find(sign); at != std::string::npos; at = form.find(sign, at)) {
    form.replace(at, 1, words);
    at += words.size();
  }
  return form;
}

std::string couplet_in_form(Form const& form, std::string_view number, std::string_view question,
                            std::string_view one, std::string_view other) {
  auto leads = form.leads;
  leads.replace(leads.find('1'), 1, one);
  leads.replace(leads.find('2', leads.find(one) + one.size()), 1, other);
  return put(put(form.title, '?', question), '#', number) + "\n" + leads + "\n";
}

std::string page_of_form(Form const& form) {
  return "<html><head><title>Key to Ausella</title></head><body>\n<h1>Key to Ausella</h1>\n"
         "<p>Use large ones. They are best seen alive.</p>\n" +
         form.before +
         couplet_in_form(form, "1", "Areola (on the back)", "Grooves touching. <a>Go to 2</a>",
                         "Grooves apart. <a>Go to 3</a>") +
         couplet_in_form(form, "2", "Eyes", "Eyes small. <a><i>Ausella busa</i></a>",
                         "Eyes large. <a><i>Ausella cusa</i></a>") +
         couplet_in_form(form, "3", "Rostrum", "Rostrum sharp. <a>Go to 4</a>",
                         "Rostrum blunt. <a><i>Ausella dusa</i></a>") +
         couplet_in_form(form, "4", "Claws of males", "Claws red. <a><i>Ausella eusa</i></a>",
                         "Claws blue. <a><i>Ausella fusa</i></a>") +
         form.behind +
         "<h2>Not sure?</h2>\n<p>Send it to us.</p>\n"
         "<ul><li>See the rules</li><li>See the map</li></ul></body></html>\n";
}

std::string const kWantedOfQuestions =
    "1[1a] Grooves touching. -> 2\n1[1b] Grooves apart. -> 3\n"
    "2[2a] Eyes small. -> Ausella busa\n2[2b] Eyes large. -> Ausella cusa\n"
    "3[3a] Rostrum sharp. -> 4\n3[3b] Rostrum blunt. -> Ausella dusa\n"
    "4[4a] Claws red. -> Ausella eusa\n4[4b] Claws blue. -> Ausella fusa\n";

std::string const kList = "<ul>\n<li>1</li>\n<li>2</li>\n</ul>";

class HypertextQuestions : public testing::TestWithParam<Form> {};

TEST_P(HypertextQuestions, StandOverTheirLeads) {
  auto const edition = read_questions(page_of_form(GetParam()));
  EXPECT_EQ(sketch(edition), kWantedOfQuestions);
  for (auto const* question : {"Areola (on the back)", "Eyes", "Rostrum", "Claws of males"}) {
    EXPECT_TRUE(has_note(edition, question)) << question;
  }
}

INSTANTIATE_TEST_SUITE_P(
    Titles, HypertextQuestions,
    testing::Values(Form{"<h3>#. ?</h3>", kList}, Form{"<h2>Question #: ?</h2>", kList},
                    Form{"<h5>#) ?</h5>", kList}, Form{"<h4>Couplet # – ?</h4>", kList},
                    Form{"<p><b>#. ?</b></p>", kList},
                    Form{"<p><strong>Step #</strong> ?</p>", kList},
                    Form{"<h3><span>#</span> ?</h3>", kList},
                    Form{"<h3>Step #</h3>\n<p>? in this one</p>", kList},
                    Form{"<h2>Step # of 9</h2>\n<h3>?</h3>", kList},
                    Form{"<h3>#. ? <a>(from 1)</a></h3>", kList},
                    Form{"<h4>#. ?</h4><p><img src=\"a.png\"></p><p>Seen from above.</p>", kList}));

INSTANTIATE_TEST_SUITE_P(
    Leads, HypertextQuestions,
    testing::Values(Form{"<dl><dt>#. ?</dt>", "<dd>1</dd><dd>2</dd></dl>"},
                    Form{"<dt>#. ?</dt>", "<dd>1</dd><dd>2</dd>", "<dl>", "</dl>"},
                    Form{"<h4>#. ?</h4>", "<p>1</p>\n<p>2</p>"},
                    Form{"<h4>#. ?</h4>", "<p>a. 1</p>\n<p>b. 2</p>"},
                    Form{"<h4>#. ?</h4>", "<p>&bull; 1</p>\n<p>&bull; 2</p>"},
                    Form{"<h4>#. ?</h4>", "<p>- 1</p>\n<p>- 2</p>"},
                    Form{"<h3>#. ?</h3>", "<ol type=\"a\"><li>1</li><li>2</li></ol>"},
                    Form{"<h3>#. ?</h3>", "<ul><li>1</li></ul>\n<ul><li>2</li></ul>"},
                    Form{"<p><b>#. ?</b><br>", "1<br>\n2</p>"},
                    Form{"<li><b>#. ?</b>", "<ul><li>1</li><li>2</li></ul></li>", "<ul>",
                         "</ul>"}));

INSTANTIATE_TEST_SUITE_P(
    Boxes, HypertextQuestions,
    testing::Values(Form{"<table><caption>#. ?</caption>",
                         "<tr><td>1</td></tr>\n<tr><td>2</td></tr></table>"},
                    Form{"<tr><th>#. ?</th></tr>", "<tr><td>1</td></tr><tr><td>2</td></tr>",
                         "<table>", "</table>"},
                    Form{"<details><summary>#. ?</summary>", "<p>1</p><p>2</p></details>"},
                    Form{"<div><div>Question #. ?</div>", "<div>1</div>\n<div>2</div></div>"},
                    Form{"<fieldset><legend>Question #: ?</legend>",
                         "<label>1</label><br>\n<label>2</label></fieldset>"}));

TEST(HypertextQuestionsEnds, MayStandOnLinesOfTheirOwn) {
  auto const list = [](std::string_view one, std::string_view to, std::string_view other,
                       std::string_view other_to) {
    return "<ul><li>" + std::string{one} + "<br>" + std::string{to} + "</li><li>" +
           std::string{other} + "<br>" + std::string{other_to} + "</li></ul>\n";
  };
  EXPECT_EQ(
      sketch(read_questions(
          "<h1>Key to Ausella</h1><h3>1. Eyes</h3>" +
          list("Small", "<a>Go to question 2</a>", "Large", "<a>Go to question 3</a>") +
          "<h3>2. Claws</h3>" + list("Red", "<i>Ausella busa</i>", "Blue", "<i>Ausella cusa</i>") +
          "<h3>3. Rostrum</h3>" +
          list("Long", "<i>Ausella dusa</i>", "Short", "<i>Ausella eusa</i>"))),
      "1[1a] Small -> 2\n1[1b] Large -> 3\n2[2a] Red -> Ausella busa\n"
      "2[2b] Blue -> Ausella cusa\n3[3a] Long -> Ausella dusa\n3[3b] Short -> Ausella eusa\n");
}

TEST(HypertextQuestionsEnds, AreAnsweredByYesAndNo) {
  auto const question = [](std::string_view number, std::string_view words, std::string_view yes,
                           std::string_view no) {
    return "<h3>Question " + std::string{number} + "</h3><p>" + std::string{words} +
           "</p><ul><li>Yes &ndash; " + std::string{yes} + "</li><li>No &ndash; " +
           std::string{no} + "</li></ul>\n";
  };
  auto const edition = read_questions(
      "<h1>Key to Ausella</h1>" +
      question("1", "Are the eyes small?", "<a>Go to 2</a>", "<a>Go to 3</a>") +
      question("2", "Is a claw red?", "<i>Ausella busa</i>", "<i>Ausella cusa</i>") +
      question("3", "Is the rostrum long?", "<i>Ausella dusa</i>", "<i>Ausella eusa</i>"));
  EXPECT_EQ(sketch(edition),
            "1[1a] Yes -> 2\n1[1b] No -> 3\n2[2a] Yes -> Ausella busa\n2[2b] No -> Ausella cusa\n"
            "3[3a] Yes -> Ausella dusa\n3[3b] No -> Ausella eusa\n");
  EXPECT_TRUE(has_note(edition, "Is a claw red?"));
}

TEST(HypertextQuestionsElsewhere, ListsUnderNumberedSectionsStayLists) {
  EXPECT_EQ(
      sketch(read_questions("<h1>Key to Ausella</h1>\n"
                            "<h2>1. What to bring</h2><ul><li>A lens</li><li>A tray</li></ul>\n"
                            "<h2>2. Where to look</h2><ul><li>Ponds</li><li>Map 2</li></ul>\n"
                            "<h2>3. When to go</h2><ul><li>May</li><li>Week 3 of June</li></ul>\n"
                            "<h2>4. The key</h2>\n<p>1. Wings clear ..... 2</p>"
                            "<p>– Wings dark ..... <i>Ausella busa</i></p>"
                            "<p>2. Legs pale ..... <i>Ausella cusa</i></p>"
                            "<p>– Legs dark ..... <i>Ausella dusa</i></p>")),
      "1[1] Wings clear -> 2\n1[–] Wings dark -> Ausella busa\n"
      "2[2] Legs pale -> Ausella cusa\n2[–] Legs dark -> Ausella dusa\n");
}

TEST(HypertextQuestionsElsewhere, NumberedAccountsBehindAKeyStayAccounts) {
  std::string const accounts =
      "<h3>1. <i>Ausella busa</i></h3><ul><li>Wings 2</li><li>See <i>Ausella cusa</i></li></ul>\n"
      "<h3>2. <i>Ausella cusa</i></h3><ul><li>Wings none</li><li>In ponds</li></ul>\n"
      "<h3>3. <i>Ausella dusa</i></h3><ul><li>Wings 4</li><li>In rivers</li></ul>\n";
  EXPECT_EQ(sketch(read_questions("<h1>Key to Ausella</h1>\n<p>1. Wings clear ..... 2</p>"
                                  "<p>– Wings dark ..... <i>Ausella busa</i></p>"
                                  "<p>2. Legs pale ..... <i>Ausella cusa</i></p>"
                                  "<p>– Legs dark ..... <i>Ausella dusa</i></p>\n" +
                                  accounts)),
            "1[1] Wings clear -> 2\n1[–] Wings dark -> Ausella busa\n"
            "2[2] Legs pale -> Ausella cusa\n2[–] Legs dark -> Ausella dusa\n");
}

TEST(HypertextQuestionsElsewhere, LabelledLeadsUnderNumbersKeepTheirLabels) {
  auto const step = [](std::string const& number, std::string_view one, std::string_view other) {
    return "<h3>" + number + ". Look closely</h3><ul><li>" + number + "a. " + std::string{one} +
           "</li><li>" + number + "b. " + std::string{other} + "</li></ul>\n";
  };
  EXPECT_EQ(sketch(read_questions(
                "<h1>Key to Ausella</h1>" + step("1", "Wings clear ..... 2", "Wings dark ..... 3") +
                step("2", "Legs pale ..... Ausella busa", "Legs dark ..... Ausella cusa") +
                step("3", "Head red ..... Ausella dusa", "Head blue ..... Ausella eusa"))),
            "1[1a] Wings clear -> 2\n1[1b] Wings dark -> 3\n2[2a] Legs pale -> Ausella busa\n"
            "2[2b] Legs dark -> Ausella cusa\n3[3a] Head red -> Ausella dusa\n"
            "3[3b] Head blue -> Ausella eusa\n");
}

}  // namespace
}  // namespace keydrift
