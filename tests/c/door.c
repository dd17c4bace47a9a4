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

int main(void)
{
    versions();
    typed_calls();
    json_calls();
    list_of_calculations();
    materials();
    printf("the C door from C: %d faults\n", failures);
    return failures == 0 ? 0 : 1;
}
