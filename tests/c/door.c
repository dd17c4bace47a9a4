/* The C door from C: versions, errors, buffers, NULL, an older struct, a choice that does not exist. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "beamcraft.h"

static int failures = 0;

#define CHECK(what)                                                       \
    do {                                                                  \
        if (!(what)) {                                                    \
            fprintf(stderr, "%s:%d: %s\n", __FILE__, __LINE__, #what);    \
            ++failures;                                                   \
        }                                                                 \
    } while (0)

static void versions(void)
{
    char text[64];
    snprintf(text, sizeof text, "%d.%d.%d", BEAMCRAFT_VERSION_MAJOR, BEAMCRAFT_VERSION_MINOR, BEAMCRAFT_VERSION_PATCH);
    CHECK(strcmp(text, BEAMCRAFT_VERSION_STRING) == 0);
    CHECK(strcmp(beamcraft_version(), BEAMCRAFT_VERSION_STRING) == 0);
    CHECK(beamcraft_abi_version() == BEAMCRAFT_ABI_VERSION);
    CHECK(strcmp(beamcraft_status_name(BEAMCRAFT_OK), "ok") == 0);
    CHECK(strcmp(beamcraft_status_name(BEAMCRAFT_E_PANIC), "panic") == 0);
    CHECK(strcmp(beamcraft_status_name(0xFFFFFFFFu), "unknown_status") == 0);
    CHECK(strlen(beamcraft_status_describe(0xFFFFFFFFu)) > 0);
}

static void typed_calls(void)
{
    beamcraft_mitre_pair_input input;
    beamcraft_mitre_pair_output output;
    beamcraft_error *error = NULL;

    beamcraft_mitre_pair_input_init(&input);
    CHECK(input.struct_size == sizeof input);
    input.thickness_a_mm = 20.0;
    CHECK(beamcraft_mitre_pair(&input, &output, &error) == BEAMCRAFT_E_NOT_FINITE);
    CHECK(beamcraft_error_count(error) == 1);
    beamcraft_error_free(error);

    input.thickness_b_mm = 20.0;
    CHECK(beamcraft_mitre_pair(&input, &output, &error) == BEAMCRAFT_OK);
    CHECK(error == NULL);
    CHECK(fabs(output.tilt_a_deg - 45.0) < 1e-12);

    /* As if corner_deg had been added after this program was compiled. */
    input.struct_size = offsetof(beamcraft_mitre_pair_input, corner_deg);
    input.corner_deg = NAN;
    CHECK(beamcraft_mitre_pair(&input, &output, NULL) == BEAMCRAFT_OK);
    input.struct_size += 1;
    CHECK(beamcraft_mitre_pair(&input, &output, NULL) == BEAMCRAFT_E_STRUCT_SIZE);
    input.struct_size = sizeof input;

    CHECK(beamcraft_mitre_pair(NULL, &output, NULL) == BEAMCRAFT_E_NULL_POINTER);
    CHECK(beamcraft_mitre_pair(&input, NULL, NULL) == BEAMCRAFT_E_NULL_POINTER);
    beamcraft_mitre_pair_input_init(NULL);
    beamcraft_error_free(NULL);
}

static void json_calls(void)
{
    static const char name[] = "mitre_pair";
    static const char input[] = "{\"thickness_a_mm\": \"3/4 in\", \"thickness_b_mm\": 19.05}";
    static const char bad[] = "{\"thickness_a_mm\": 0, \"thickness_c_mm\": 19.05}";
    size_t needed = 0;
    beamcraft_error *error = NULL;

    CHECK(beamcraft_call_json(name, strlen(name), input, strlen(input), NULL, 0, &needed, &error) == BEAMCRAFT_OK);
    CHECK(needed > 2 && error == NULL);
    char *text = malloc(needed);
    if (text == NULL) {
        ++failures;
        return;
    }
    CHECK(beamcraft_call_json(name, strlen(name), input, strlen(input), text, needed - 1, &needed, NULL) ==
          BEAMCRAFT_E_BUFFER_TOO_SMALL);
    CHECK(beamcraft_call_json(name, strlen(name), input, strlen(input), text, needed, &needed, NULL) == BEAMCRAFT_OK);
    CHECK(strlen(text) + 1 == needed && strstr(text, "\"tilt_a_deg\":45.0") != NULL);
    free(text);

    CHECK(beamcraft_call_json(name, strlen(name), bad, strlen(bad), NULL, 0, &needed, &error) ==
          BEAMCRAFT_E_UNKNOWN_FIELD);
    const size_t count = beamcraft_error_count(error);
    CHECK(count == 2);
    for (size_t index = 0; index < count; ++index) {
        char message[256];
        beamcraft_status code = BEAMCRAFT_OK;
        CHECK(beamcraft_error_code(error, index, &code) == BEAMCRAFT_OK && code != BEAMCRAFT_OK);
        CHECK(beamcraft_error_message(error, index, message, sizeof message, &needed) == BEAMCRAFT_OK);
        CHECK(strlen(message) + 1 == needed);
    }
    beamcraft_error_free(error);
}

static void list_of_calculations(void)
{
    const size_t count = beamcraft_calculation_count();
    int found = 0;
    CHECK(count > 0);
    for (size_t index = 0; index < count; ++index) {
        char name[128];
        char purpose[512];
        size_t needed = 0;
        CHECK(beamcraft_calculation_name(index, name, sizeof name, &needed, NULL) == BEAMCRAFT_OK);
        CHECK(beamcraft_calculation_purpose(index, purpose, sizeof purpose, &needed, NULL) == BEAMCRAFT_OK);
        CHECK(beamcraft_calculation_schema(index, BEAMCRAFT_SCHEMA_INPUT, NULL, 0, &needed, NULL) == BEAMCRAFT_OK);
        CHECK(needed > 10);
        found |= strcmp(name, "mitre_pair") == 0;
    }
    CHECK(found);
    size_t needed = 0;
    CHECK(beamcraft_calculation_name(count, NULL, 0, &needed, NULL) == BEAMCRAFT_E_OUT_OF_RANGE);
    CHECK(beamcraft_calculation_schema(0, 2, NULL, 0, &needed, NULL) == BEAMCRAFT_E_UNKNOWN_CHOICE);
}

static void materials(void)
{
    static const char wood[] = "white ash";
    static const char column[] = "movement_tangential_per_pct";
    static const char slip[] = "whit ash";
    char name[64];
    size_t count = 0, index = 0, needed = 0;
    double value = 0.0;
    beamcraft_error *error = NULL;

    CHECK(beamcraft_material_count(BEAMCRAFT_MATERIALS_SPECIES, &count, NULL) == BEAMCRAFT_OK);
    CHECK(count > 50);
    CHECK(beamcraft_material_find(BEAMCRAFT_MATERIALS_SPECIES, wood, strlen(wood), &index, NULL) == BEAMCRAFT_OK);
    CHECK(index < count);
    CHECK(beamcraft_material_name(BEAMCRAFT_MATERIALS_SPECIES, index, name, sizeof name, &needed, NULL) == BEAMCRAFT_OK);
    CHECK(strcmp(name, "Ash, white") == 0);
    CHECK(beamcraft_material_number(BEAMCRAFT_MATERIALS_SPECIES, index, column, strlen(column), &value, NULL) == BEAMCRAFT_OK);
    CHECK(fabs(value - 0.00274) < 1e-12);
    CHECK(beamcraft_material_json(BEAMCRAFT_MATERIALS_SPECIES, index, NULL, 0, &needed, NULL) == BEAMCRAFT_OK);
    CHECK(needed > 200);
    CHECK(beamcraft_material_find(BEAMCRAFT_MATERIALS_SPECIES, slip, strlen(slip), &index, &error) == BEAMCRAFT_E_UNKNOWN_NAME);
    CHECK(beamcraft_error_count(error) == 1);
    beamcraft_error_free(error);
    CHECK(beamcraft_material_count(99, &count, NULL) == BEAMCRAFT_E_UNKNOWN_CHOICE);
}

/* The front of a body of 1830 x 185 x 215 in boards of 20: its triangles copied into our arrays, and every drawing. */
static void panels_and_drawings(void)
{
    const char *const spec =
        "{\"beamcraft_spec\":1,\"body\":{\"legs\":[{\"rectangular\":{\"length_mm\":1830,\"height_mm\":185,\"depth_mm\":215,"
        "\"boards\":[{\"face\":\"front\",\"thickness_mm\":20},{\"face\":\"top\",\"thickness_mm\":20},"
        "{\"face\":\"bottom\",\"thickness_mm\":20}],\"left_end\":{\"kind\":\"return_panel\",\"thickness_mm\":20},"
        "\"right_end\":{\"kind\":\"return_panel\",\"thickness_mm\":20}}}]},"
        "\"wood\":{\"species\":\"white ash\",\"moisture_pct\":8}}";
    beamcraft_plan *plan = NULL;
    beamcraft_error *error = NULL;
    double corners[3 * 16];
    uint32_t triangles[3 * 32];
    uint32_t tags[32];
    char name[64];
    size_t needed = 0;
    size_t count = 0;

    CHECK(beamcraft_plan_new(spec, strlen(spec), &plan, &error) == BEAMCRAFT_OK);
    if (plan == NULL) {
        beamcraft_error_free(error);
        return;
    }
    CHECK(beamcraft_plan_panel_count(plan, &count, NULL) == BEAMCRAFT_OK && count == 5);
    CHECK(beamcraft_plan_panel_vertices(plan, 0, corners, 3, &needed, NULL) == BEAMCRAFT_E_BUFFER_TOO_SMALL);
    CHECK(beamcraft_plan_panel_vertices(plan, 0, corners, 3 * 16, &needed, NULL) == BEAMCRAFT_OK && needed == 3 * 8);
    CHECK(beamcraft_plan_panel_triangles(plan, 0, triangles, 3 * 32, &count, NULL) == BEAMCRAFT_OK && count == 3 * 12);
    CHECK(beamcraft_plan_panel_triangle_tags(plan, 0, tags, 32, &needed, NULL) == BEAMCRAFT_OK && needed == 12);
    CHECK(tags[0] == 0 && tags[11] > 1);
    double volume = 0.0;
    for (size_t at = 0; at + 2 < count; at += 3) {
        const double *const a = corners + 3 * triangles[at];
        const double *const b = corners + 3 * triangles[at + 1];
        const double *const c = corners + 3 * triangles[at + 2];
        volume += (a[0] * (b[1] * c[2] - b[2] * c[1]) - a[1] * (b[0] * c[2] - b[2] * c[0]) +
                   a[2] * (b[0] * c[1] - b[1] * c[0])) /
                  6.0;
    }
    /* Prismoid: h/6 (A1 + 4 Am + A2) of 1830 x 185, 1810 x 165 and 1790 x 145. */
    const double wanted = 20.0 / 6.0 * (1830.0 * 185.0 + 4.0 * 1810.0 * 165.0 + 1790.0 * 145.0);
    CHECK(fabs(volume - wanted) < 1e-3);

    CHECK(beamcraft_plan_drawing_count(plan, &count, NULL) == BEAMCRAFT_OK && count == 2 + 2 * 5);
    for (size_t index = 0; index < count; ++index) {
        CHECK(beamcraft_plan_drawing_name(plan, index, name, sizeof name, &needed, NULL) == BEAMCRAFT_OK);
        CHECK(beamcraft_plan_drawing_svg(plan, name, strlen(name), NULL, 0, &needed, NULL) == BEAMCRAFT_OK);
        char *const svg = malloc(needed);
        if (svg == NULL) {
            ++failures;
            break;
        }
        CHECK(beamcraft_plan_drawing_svg(plan, name, strlen(name), svg, needed, &needed, NULL) == BEAMCRAFT_OK);
        CHECK(strncmp(svg, "<svg ", 5) == 0 && strstr(svg, "</svg>") != NULL);
        free(svg);
    }
    CHECK(beamcraft_plan_drawing_svg(plan, "panel_frnt", 10, NULL, 0, &needed, &error) == BEAMCRAFT_E_UNKNOWN_NAME);
    CHECK(beamcraft_error_count(error) == 1);
    beamcraft_error_free(error);
    beamcraft_plan_free(plan);
}

/* A field of numbers of a call over columns. */
static beamcraft_column_input numbers(const char *name, const double *values, size_t count)
{
    beamcraft_column_input column = {name, strlen(name), values, NULL, count};
    return column;
}

static void column_calls(void)
{
    static const char name[] = "dowel_bearing";
    enum { ROWS = 5000 };
    static double gravity[ROWS], diameter[ROWS], angle_mpa[ROWS];
    static uint32_t direction[ROWS], size_range[ROWS], status[ROWS], field[ROWS];
    const double angle = 30.0;
    beamcraft_error *error = NULL;
    size_t refused = 0;

    for (size_t row = 0; row < ROWS; ++row) {
        gravity[row] = 0.35 + 0.0001 * (double)row;
        diameter[row] = 3.0 + (double)(row % 20);
        direction[row] = row % 2 == 0 ? BEAMCRAFT_FASTENER_DIRECTION_SIDE_GRAIN : BEAMCRAFT_FASTENER_DIRECTION_END_GRAIN;
    }
    gravity[7] = -1.0;
    direction[4999] = 2;
    beamcraft_column_input inputs[4] = {
        numbers("specific_gravity", gravity, ROWS), numbers("diameter_mm", diameter, ROWS),
        numbers("angle_to_grain_deg", &angle, 1), numbers("direction", NULL, ROWS)};
    inputs[3].codes = direction;
    beamcraft_column_output outputs[2] = {
        {"at_angle_mpa", strlen("at_angle_mpa"), angle_mpa, NULL}, {"size_range", strlen("size_range"), NULL, size_range}};
    for (uint32_t threads = 1; threads <= 3; ++threads) {
        memset(angle_mpa, 0, sizeof angle_mpa);
        CHECK(beamcraft_columns(name, strlen(name), ROWS, inputs, 4, outputs, 2, threads, status, field, &refused,
                                &error) == BEAMCRAFT_OK);
        CHECK(error == NULL && refused == 2);
        CHECK(status[7] == BEAMCRAFT_E_OUT_OF_RANGE && field[7] == 0 && isnan(angle_mpa[7]));
        CHECK(status[4999] == BEAMCRAFT_E_UNKNOWN_CHOICE && field[4999] == 3);
        CHECK(size_range[4999] == BEAMCRAFT_ABSENT && status[0] == BEAMCRAFT_OK && field[0] == BEAMCRAFT_ABSENT);
        for (size_t row = 0; row < ROWS; ++row) {
            beamcraft_dowel_bearing_input one;
            beamcraft_dowel_bearing_output found;
            beamcraft_dowel_bearing_input_init(&one);
            one.specific_gravity = gravity[row];
            one.diameter_mm = diameter[row];
            one.angle_to_grain_deg = angle;
            one.direction = direction[row];
            const beamcraft_status single = beamcraft_dowel_bearing(&one, &found, NULL);
            CHECK(single == status[row]);
            CHECK(single != BEAMCRAFT_OK || (found.at_angle_mpa == angle_mpa[row] && found.size_range == size_range[row]));
        }
    }

    /* What does not fit is refused by name, before anything is written. */
    inputs[0].count = 3;
    outputs[1].name = "size_rang";
    CHECK(beamcraft_columns(name, strlen(name), ROWS, inputs, 4, outputs, 2, 0, NULL, NULL, NULL, &error) ==
          BEAMCRAFT_E_OUT_OF_RANGE);
    CHECK(beamcraft_error_count(error) == 3);
    beamcraft_error_free(error);
    inputs[0].count = ROWS;
    outputs[1].name = "size_range";
    outputs[1].codes = status;
    CHECK(beamcraft_columns(name, strlen(name), ROWS, inputs, 4, outputs, 2, 1, status, NULL, NULL, NULL) ==
          BEAMCRAFT_E_INCONSISTENT);
    outputs[1].codes = size_range;
    outputs[0].numbers = diameter + ROWS - 1;
    CHECK(beamcraft_columns(name, strlen(name), ROWS, inputs, 4, outputs, 2, 1, NULL, NULL, NULL, NULL) ==
          BEAMCRAFT_E_INCONSISTENT);
    outputs[0].numbers = NULL;
    CHECK(beamcraft_columns(name, strlen(name), ROWS, inputs, 4, outputs, 2, 1, NULL, NULL, NULL, NULL) ==
          BEAMCRAFT_E_NULL_POINTER);
    CHECK(beamcraft_columns(name, strlen(name), ROWS, NULL, 4, NULL, 0, 1, NULL, NULL, NULL, NULL) ==
          BEAMCRAFT_E_NULL_POINTER);
    CHECK(beamcraft_columns("plan", 4, 1, NULL, 0, NULL, 0, 1, NULL, NULL, NULL, NULL) == BEAMCRAFT_E_NOT_SUPPORTED);
}

int main(void)
{
    versions();
    typed_calls();
    json_calls();
    list_of_calculations();
    materials();
    panels_and_drawings();
    column_calls();
    printf("the C door from C: %d faults\n", failures);
    return failures == 0 ? 0 : 1;
}
