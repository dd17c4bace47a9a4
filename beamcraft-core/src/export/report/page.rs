//! Pieces of a page. Text enters a page through [`Html::text`] only, which escapes it.

use super::super::text::{escaped, push};

/// Markup.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Html(String);

impl Html {
    /// Plain text.
    pub(super) fn text(text: &str) -> Self {
        Self(escaped(text))
    }

    /// A name that someone gave, kept apart from the direction of the text around it.
    pub(super) fn name(text: &str) -> Self {
        Self(format!("<bdi>{}</bdi>", escaped(text)))
    }

    /// Text in an element of a class.
    pub(super) fn marked(class: &'static str, text: &str) -> Self {
        Self(format!("<span class=\"{class}\">{}</span>", escaped(text)))
    }

    /// Parts that open on demand, under a heading.
    pub(super) fn folded(heading: &str, parts: &[String]) -> Self {
        let parts: String = parts.iter().map(|part| format!("<li>{}</li>", escaped(part))).collect();
        Self(format!("<details><summary>{}</summary><ul>{parts}</ul></details>", escaped(heading)))
    }

    /// Parts one after the other.
    pub(super) fn joined(parts: &[Self]) -> Self {
        Self(parts.iter().map(|part| part.0.as_str()).collect())
    }

    /// Parts, each on a line.
    pub(super) fn lines(parts: &[Self]) -> Self {
        let parts: Vec<&str> = parts.iter().filter(|part| !part.0.is_empty()).map(|part| part.0.as_str()).collect();
        Self(parts.join("<br>"))
    }
}

impl From<String> for Html {
    fn from(text: String) -> Self {
        Self::text(&text)
    }
}

impl From<&str> for Html {
    fn from(text: &str) -> Self {
        Self::text(text)
    }
}

/// A page that is written on.
#[derive(Default)]
pub(super) struct Page {
    body: String,
}

impl Page {
    pub(super) fn heading(&mut self, text: &str) {
        self.element("h2", "", &Html::text(text));
    }

    pub(super) fn minor_heading(&mut self, text: &str) {
        self.element("h3", "", &Html::text(text));
    }

    pub(super) fn title(&mut self, title: &Html) {
        self.element("h1", "", title);
    }

    pub(super) fn paragraph(&mut self, text: impl Into<Html>) {
        self.element("p", "", &text.into());
    }

    pub(super) fn remark(&mut self, text: impl Into<Html>) {
        self.element("p", " class=\"soft\"", &text.into());
    }

    fn element(&mut self, element: &str, attributes: &str, html: &Html) {
        push(&mut self.body, format_args!("<{element}{attributes}>{}</{element}>\n", html.0));
    }

    /// A list of plain texts.
    pub(super) fn list<'a>(&mut self, items: impl IntoIterator<Item = &'a str>) {
        self.body.push_str("<ul>\n");
        for item in items {
            self.element("li", "", &Html::text(item));
        }
        self.body.push_str("</ul>\n");
    }

    /// A box with paragraphs.
    pub(super) fn card(&mut self, class: &'static str, paragraphs: &[Html]) {
        push(&mut self.body, format_args!("<div class=\"card {class}\">\n"));
        for paragraph in paragraphs.iter().filter(|paragraph| !paragraph.0.is_empty()) {
            self.element("p", "", paragraph);
        }
        self.body.push_str("</div>\n");
    }

    /// A drawing that is markup already.
    pub(super) fn drawing(&mut self, svg: &str) {
        push(&mut self.body, format_args!("<figure tabindex=\"0\">{svg}</figure>\n"));
    }

    /// A table; on a narrow screen each row becomes a list of named values under its first cell.
    pub(super) fn table<const N: usize>(
        &mut self,
        caption: &str,
        heads: [&str; N],
        rows: impl IntoIterator<Item = [Html; N]>,
    ) {
        self.body.push_str("<table>\n");
        if !caption.is_empty() {
            self.element("caption", "", &Html::text(caption));
        }
        self.body.push_str("<thead><tr>");
        for head in heads {
            self.element("th", " scope=\"col\"", &Html::text(head));
        }
        self.body.push_str("</tr></thead>\n<tbody>\n");
        for row in rows {
            self.body.push_str("<tr>");
            for (at, (head, cell)) in heads.iter().zip(&row).enumerate() {
                let class = if at == 0 { " class=\"lead\"" } else { number_class(&cell.0) };
                // One box around what a cell holds: on a phone it stands beside the name of the column.
                let (open, close) = if cell.0.is_empty() { ("", "") } else { ("<div>", "</div>") };
                let name = escaped(head);
                push(&mut self.body, format_args!("<td{class} data-name=\"{name}\">{open}{}{close}</td>", cell.0));
            }
            self.body.push_str("</tr>\n");
        }
        self.body.push_str("</tbody>\n</table>\n");
    }

    /// The whole document.
    pub(super) fn finish(self, title: &str, style: &str) -> String {
        format!(
            "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n\
             <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>{}</title>\n\
             <style>\n{style}</style>\n</head>\n<body>\n{}</body>\n</html>\n",
            escaped(title),
            self.body
        )
    }
}

/// Short cells that begin with a digit stay on one line.
fn number_class(cell: &str) -> &'static str {
    let is_number = cell.len() < 20 && cell.starts_with(|letter: char| letter.is_ascii_digit() || letter == '-');
    if is_number && !cell.contains('<') { " class=\"number\"" } else { "" }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn text_enters_a_page_escaped() {
        let mut page = Page::default();
        page.heading("<h>");
        page.paragraph("<p>");
        page.card("stop", &[Html::name("<n>"), Html::default()]);
        page.list(["<l>"]);
        page.table("<c>", ["<a>", "b"], [[Html::marked("met", "<m>"), Html::folded("<f>", &["<i>".to_owned()])]]);
        let html = page.finish("<t>", "");
        for raw in ["<h>", "<n>", "<l>", "<c>", "<a>", "<m>", "<f>", "<t>"] {
            assert!(!html.contains(raw), "{raw}");
            assert!(html.contains(&escaped(raw)), "{raw}");
        }
        assert_eq!(html.matches("<p>").count(), 2, "{html}");
        assert_eq!(html.matches("<i>").count(), 0);
    }

    #[test]
    fn every_cell_says_what_it_is() {
        let mut page = Page::default();
        page.table("", ["panel", "thickness"], [["front".into(), "20 mm".into()]]);
        let html = page.finish("", "");
        assert!(html.contains(
            "<td class=\"lead\" data-name=\"panel\"><div>front</div></td><td class=\"number\" data-name=\"thickness\"><div>20 mm</div></td>"
        ));
    }
}
