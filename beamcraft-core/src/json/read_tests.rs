use super::read;
use crate::error::{Error, ErrorCode};
use crate::registry::call;
use crate::shell::MitrePairInput;

fn faults(text: &str) -> Error {
    read::<MitrePairInput>(text).expect_err("must be refused")
}

#[test]
fn every_fault_is_named_at_once_with_the_closest_name() {
    let error = faults(r#"{"thickness_a": 20, "thickness_b_mm": "thick", "corner_deg": true}"#);
    let found: Vec<_> = error.details().iter().map(|fault| (fault.code, fault.path.as_str())).collect();
    assert_eq!(
        found,
        [
            (ErrorCode::UnknownField, "thickness_a"),
            (ErrorCode::Malformed, "thickness_b_mm"),
            (ErrorCode::WrongType, "corner_deg"),
            (ErrorCode::MissingField, "thickness_a_mm"),
        ]
    );
    assert!(error.to_string().contains("did you mean thickness_a_mm?"), "{error}");
}

#[test]
fn a_doubled_field_is_refused_even_beside_a_shop_length() {
    for second in ["30", "\"30 mm\""] {
        let error = faults(&format!(r#"{{"thickness_a_mm": 20, "thickness_b_mm": 20, "thickness_a_mm": {second}}}"#));
        assert_eq!((error.code(), error.field()), (ErrorCode::DuplicateField, "thickness_a_mm"));
    }
}

#[test]
fn what_is_not_json_is_malformed() {
    for text in ["", "{", "[1,", "nul", "{\"thickness_a_mm\": 1e999}", "\u{0}"] {
        assert_eq!(faults(text).code(), ErrorCode::Malformed, "{text:?}");
    }
    for list in ["[]", "[20, 20]", "[20, 20, 90]"] {
        assert_eq!(faults(list).code(), ErrorCode::WrongType);
    }
}

#[test]
fn fields_are_given_by_name_never_by_place() {
    let error = faults("[19.0, 19.0, 90.0]");
    assert_eq!((error.code(), error.field()), (ErrorCode::WrongType, ""));
}

#[test]
fn an_unknown_calculation_names_the_closest() {
    let error = call("mitre_pear", "{}").expect_err("unknown");
    assert_eq!(error.code(), ErrorCode::UnknownName);
    assert!(error.to_string().contains("did you mean mitre_pair?"), "{error}");
}
