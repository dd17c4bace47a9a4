/*
 * A hollow ash shelf beam: 1830 mm long, 185 mm high, 215 mm deep, boards of 20 mm, mitred all round, open at
 * the back, hung on a bevelled cleat that is screwed to studs at 600 mm.
 *
 *     cc hearth_beam.c $(pkg-config --cflags --libs beamcraft) -o hearth_beam
 *     ./hearth_beam                            single steps, by typed calls
 *     ./hearth_beam ash_shelf_beam.json        and then the whole job, by the plan of a spec
 *
 * The numbers hold for the stated wood, loads and screws only; local codes and licensed practice decide.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "beamcraft.h"

static const double LENGTH_MM = 1830.0;
static const double HEIGHT_MM = 185.0;
static const double DEPTH_MM = 215.0;
static const double BOARD_MM = 20.0;
static const double STRIP_MM = 18.0;
static const double BEVEL_DEG = 45.0;
static const double KERF_MM = 3.2;
static const double GRAVITY_M_PER_S2 = 9.80665;
/* White ash, ovendry mass over volume at 12 % moisture (FPL-GTR-190, chapter 5). */
static const double ASH_GRAVITY = 0.60;

/*
 * Ends the program with what the library says, unless the call went well. It takes the place of the error object,
 * not the object: C does not say which of two arguments is looked at first.
 */
static void must(beamcraft_status status, beamcraft_error **error)
{
    if (status == BEAMCRAFT_OK) {
        return;
    }
    size_t needed = 0;
    char *text = NULL;
    if (beamcraft_error_text(*error, NULL, 0, &needed) == BEAMCRAFT_OK) {
        text = malloc(needed);
    }
    if (text != NULL && beamcraft_error_text(*error, text, needed, &needed) == BEAMCRAFT_OK) {
        fprintf(stderr, "%s\n", text);
    } else {
        fprintf(stderr, "%s\n", beamcraft_status_describe(status));
    }
    free(text);
    beamcraft_error_free(*error);
    exit(EXIT_FAILURE);
}

/* How the long edges and the ends meet: one corner stands for all, since every corner is square. */
static void corners(void)
{
    beamcraft_error *error = NULL;
    beamcraft_mitre_pair_input input;
    beamcraft_mitre_pair_output mitre;
    beamcraft_mitre_pair_input_init(&input);
    input.thickness_a_mm = BOARD_MM;
    input.thickness_b_mm = BOARD_MM;
    must(beamcraft_mitre_pair(&input, &mitre, &error), &error);
    printf("mitres\n");
    printf("  blade tilt                %8.2f deg\n", mitre.tilt_a_deg);
    printf("  seam                      %8.2f mm\n", mitre.seam_mm);
    printf("  inner face shorter by     %8.2f mm at each edge\n", mitre.setback_a_mm);
}

/* Mass of the boards; also how far their centre lies behind the front face. */
static double boards_kg(double *out_centre_mm)
{
    beamcraft_error *error = NULL;
    beamcraft_wood_density_input input;
    beamcraft_wood_density_output wood;
    beamcraft_wood_density_input_init(&input);
    input.specific_gravity = ASH_GRAVITY;
    input.basis = BEAMCRAFT_GRAVITY_BASIS_TWELVE_PERCENT;
    input.moisture_pct = 8.0;
    must(beamcraft_wood_density(&input, &wood, &error), &error);

    /* The outer block less the hollow, which is open towards the wall. */
    const double outer_mm3 = LENGTH_MM * HEIGHT_MM * DEPTH_MM;
    const double hollow_mm3 = (LENGTH_MM - 2.0 * BOARD_MM) * (HEIGHT_MM - 2.0 * BOARD_MM) * (DEPTH_MM - BOARD_MM);
    const double boards_mm3 = outer_mm3 - hollow_mm3;
    *out_centre_mm = (outer_mm3 * DEPTH_MM / 2.0 - hollow_mm3 * (DEPTH_MM + BOARD_MM) / 2.0) / boards_mm3;
    const double mass_kg = boards_mm3 * 1e-9 * wood.density_kg_m3;
    printf("boards\n");
    printf("  ash at 8 %%                %8.0f kg/m3\n", wood.density_kg_m3);
    printf("  mass                      %8.2f kg\n", mass_kg);
    return mass_kg;
}

/* The strip ripped into two halves. */
static beamcraft_cleat_halves_output cleat(void)
{
    beamcraft_error *error = NULL;
    beamcraft_cleat_halves_input input;
    beamcraft_cleat_halves_output halves;
    beamcraft_cleat_halves_input_init(&input);
    input.strip_width_mm = 94.0;
    input.thickness_mm = STRIP_MM;
    input.bevel_deg = BEVEL_DEG;
    input.kerf_mm = KERF_MM;
    input.blunt_mm = 2.0;
    must(beamcraft_cleat_halves(&input, &halves, &error), &error);
    printf("cleat\n");
    printf("  fence, long face up       %8.2f mm\n", halves.fence_leaning_away_mm);
    printf("  rise to clear the points  %8.2f mm\n", halves.lift_mm);
    printf("  height of the pair        %8.2f mm\n", halves.pair_height_mm);
    return halves;
}

/* Whether it stays on its seat, and whether the screws in the studs hold. */
static void hang(double mass_kg, double centre_mm, const beamcraft_cleat_halves_output *halves)
{
    beamcraft_error *error = NULL;
    /* On the top 718 N/m2 (15 lbf/ft2), and somebody leans on the front edge with 200 N. */
    const double own_n = mass_kg * GRAVITY_M_PER_S2;
    const double goods_n = 718.0 * LENGTH_MM * DEPTH_MM * 1e-6;
    const double push_n = 200.0;
    const double weight_n = own_n + goods_n + push_n;
    /* All lengths from the wall: own weight, goods on the middle of the top, the push on the front edge. */
    const double out_mm = (own_n * (DEPTH_MM - centre_mm) + goods_n * DEPTH_MM / 2.0 + push_n * DEPTH_MM) / weight_n;
    /* The pair hangs from the inside of the top; the wall half bears at its point, the foot at the underside. */
    const double wall_half_foot_mm = HEIGHT_MM - BOARD_MM - halves->pair_height_mm;

    beamcraft_cleat_seat_input seat_input;
    beamcraft_cleat_seat_output seat;
    beamcraft_cleat_seat_input_init(&seat_input);
    seat_input.weight_n = weight_n;
    seat_input.centre_out_mm = out_mm - STRIP_MM;
    seat_input.foot_below_mm = wall_half_foot_mm + halves->blunted_face_mm;
    seat_input.bevel_deg = BEVEL_DEG;
    must(beamcraft_cleat_seat(&seat_input, &seat, &error), &error);
    printf("seat\n");
    printf("  load                      %8.0f N, %.0f mm from the wall\n", weight_n, out_mm);
    printf("  pull of the bevel         %8.0f N without friction\n", seat.pull_without_friction_n);
    if ((seat.given & BEAMCRAFT_CLEAT_SEAT_OUTPUT_GIVEN_RATIO_WITHOUT_FRICTION) != 0) {
        printf("  needed over that          %8.2f, %s\n", seat.ratio_without_friction,
               seat.outcome == BEAMCRAFT_OUTCOME_MET ? "holds by its bevel alone" : "needs a lock that holds it down");
    }

    beamcraft_wall_strip_screws_input strip_input;
    beamcraft_wall_strip_screws_output strip;
    beamcraft_wall_strip_screws_input_init(&strip_input);
    strip_input.vertical_n = seat.vertical_n;
    strip_input.horizontal_n = seat.design_pull_n;
    strip_input.contact_out_mm = STRIP_MM;
    strip_input.contact_up_mm = halves->blunted_face_mm;
    strip_input.screw_row_up_mm = 30.0;
    strip_input.strip_height_mm = halves->short_face_mm;
    strip_input.screw_count = 3;
    must(beamcraft_wall_strip_screws(&strip_input, &strip, &error), &error);

    /* A No. 14 screw, 100 mm, through the ash strip and 12.5 mm of lining into a spruce stud. */
    beamcraft_screw_joint_input joint_input;
    beamcraft_screw_joint_output joint;
    beamcraft_screw_joint_input_init(&joint_input);
    joint_input.size = BEAMCRAFT_SCREW_SIZE_NO_14;
    joint_input.screw_length_mm = 100.0;
    joint_input.side_specific_gravity = ASH_GRAVITY;
    joint_input.side_thickness_mm = STRIP_MM;
    joint_input.side_angle_to_grain_deg = 90.0;
    joint_input.gap_mm = 12.5;
    joint_input.main_specific_gravity = 0.42;
    joint_input.main_thickness_mm = 95.0;
    joint_input.main_angle_to_grain_deg = 0.0;
    joint_input.lateral_n = strip.shear_per_screw_n;
    joint_input.withdrawal_n = strip.tension_per_screw_n;
    must(beamcraft_screw_joint(&joint_input, &joint, &error), &error);
    printf("screws\n");
    printf("  shear and tension of one  %8.0f N and %.0f N\n", joint_input.lateral_n, joint_input.withdrawal_n);
    printf("  depth in the stud         %8.1f mm of %.1f mm needed\n", joint.penetration_mm,
           joint.required_penetration_mm);
    printf("  utilisation               %8.2f, %s\n", joint.utilisation,
           joint.outcome == BEAMCRAFT_OUTCOME_MET ? "met" : "not met");
}

/* Two coats on every face that is seen. */
static void finish(void)
{
    beamcraft_error *error = NULL;
    beamcraft_finish_quantity_input input;
    beamcraft_finish_quantity_output finish;
    beamcraft_finish_quantity_input_init(&input);
    input.area_m2 = (LENGTH_MM * (HEIGHT_MM + 2.0 * DEPTH_MM) + 2.0 * HEIGHT_MM * DEPTH_MM) * 1e-6;
    input.coats = 2;
    input.spread_m2_per_l = 12.0;
    must(beamcraft_finish_quantity(&input, &finish, &error), &error);
    printf("finish\n");
    printf("  two coats on %.2f m2      %8.2f L\n", input.area_m2, finish.needed_l);
}

/* A whole file, for the caller to free. */
static char *read_file(const char *path, size_t *out_length)
{
    FILE *file = fopen(path, "rb");
    char *text = NULL;
    size_t length = 0;
    size_t capacity = 0;
    if (file == NULL) {
        perror(path);
        exit(EXIT_FAILURE);
    }
    for (;;) {
        if (length == capacity) {
            capacity = capacity == 0 ? 4096 : capacity * 2;
            char *larger = realloc(text, capacity);
            if (larger == NULL) {
                perror(path);
                exit(EXIT_FAILURE);
            }
            text = larger;
        }
        const size_t count = fread(text + length, 1, capacity - length, file);
        if (count == 0) {
            break;
        }
        length += count;
    }
    fclose(file);
    *out_length = length;
    return text;
}

/* The whole job: panels, checks, findings, cautions. */
static void whole_job(const char *path)
{
    static const char *const GRADES[] = {"note", "caution", "stop"};
    static const char *const OUTCOMES[] = {"met", "NOT MET", "not covered", "not determined"};
    beamcraft_error *error = NULL;
    beamcraft_plan *plan = NULL;
    size_t length = 0;
    char *spec = read_file(path, &length);
    const beamcraft_status status = beamcraft_plan_new(spec, length, &plan, &error);
    free(spec);
    must(status, &error);

    char text[1024];
    size_t needed = 0;
    size_t count = 0;
    double mass_kg = 0.0;
    double centre_mm[3];
    must(beamcraft_plan_mass_kg(plan, &mass_kg, &error), &error);
    must(beamcraft_plan_centre_mm(plan, centre_mm, &error), &error);
    printf("plan\n");
    printf("  to be lifted              %8.2f kg, centre at %.0f, %.0f, %.0f mm\n", mass_kg, centre_mm[0], centre_mm[1],
           centre_mm[2]);

    must(beamcraft_plan_panel_count(plan, &count, &error), &error);
    printf("panels, long points       length    width    thickness  corners\n");
    for (size_t panel = 0; panel < count; ++panel) {
        beamcraft_panel_size size;
        double corners_mm[3 * 32];
        must(beamcraft_plan_panel_id(plan, panel, text, sizeof text, &needed, &error), &error);
        must(beamcraft_plan_panel_size(plan, panel, &size, &error), &error);
        must(beamcraft_plan_piece_vertices(plan, panel, 0, corners_mm, sizeof corners_mm / sizeof corners_mm[0],
                                           &needed, &error),
             &error);
        printf("  %-22s %8.1f %8.1f %8.1f mm %8zu\n", text, size.show_length_mm, size.show_width_mm, size.thickness_mm,
               needed / 3);
    }

    must(beamcraft_plan_drawing_count(plan, &count, &error), &error);
    printf("drawings                   bytes of SVG\n");
    for (size_t drawing = 0; drawing < count; ++drawing) {
        must(beamcraft_plan_drawing_name(plan, drawing, text, sizeof text, &needed, &error), &error);
        must(beamcraft_plan_drawing_svg(plan, text, strlen(text), NULL, 0, &needed, &error), &error);
        printf("  %-22s %8zu\n", text, needed - 1);
    }

    must(beamcraft_plan_check_count(plan, &count, &error), &error);
    printf("checks\n");
    for (size_t index = 0; index < count; ++index) {
        beamcraft_check check;
        must(beamcraft_plan_check(plan, index, &check, &error), &error);
        must(beamcraft_plan_check_text(plan, index, BEAMCRAFT_CHECK_TEXT_NAME, text, sizeof text, &needed, &error),
             &error);
        printf("  %-14s ", OUTCOMES[check.outcome]);
        if ((check.given & BEAMCRAFT_CHECK_GIVEN_UTILISATION) != 0) {
            printf("%6.2f  %s\n", check.utilisation, text);
        } else {
            printf("        %s\n", text);
        }
    }

    must(beamcraft_plan_finding_count(plan, &count, &error), &error);
    printf("findings\n");
    for (size_t index = 0; index < count; ++index) {
        uint32_t grade = 0;
        must(beamcraft_plan_finding_grade(plan, index, &grade, &error), &error);
        must(beamcraft_plan_finding_text(plan, index, BEAMCRAFT_FINDING_TEXT_MESSAGE, text, sizeof text, &needed,
                                         &error),
             &error);
        printf("  %-8s %s\n", GRADES[grade], text);
    }

    must(beamcraft_plan_caution_count(plan, &count, &error), &error);
    printf("cautions\n");
    for (size_t index = 0; index < count; ++index) {
        must(beamcraft_plan_caution_text(plan, index, text, sizeof text, &needed, &error), &error);
        printf("  %s\n", text);
    }
    beamcraft_plan_free(plan);
}

int main(int argument_count, char **arguments)
{
    if (beamcraft_abi_version() != BEAMCRAFT_ABI_VERSION) {
        fprintf(stderr, "compiled for another binary interface than that of beamcraft %s\n", beamcraft_version());
        return EXIT_FAILURE;
    }
    double centre_mm = 0.0;
    corners();
    const double mass_kg = boards_kg(&centre_mm);
    const beamcraft_cleat_halves_output halves = cleat();
    hang(mass_kg, centre_mm, &halves);
    finish();
    if (argument_count > 1) {
        whole_job(arguments[1]);
    }
    return EXIT_SUCCESS;
}
