/* Monte Carlo light transport in a ceramic body on a stump: plates, a step of the wall, shells, and
 * bodies bounded by triangles. A tool of the developer, not part of the program; README.md says how
 * it is run, and light_transport.py runs it.
 *
 * Units mm, 1/mm. Ceramic of index 2.15 in air, stump of index 1.52; both scatter isotropically,
 * every surface is smooth and unpolarised Fresnel. Light enters as from an even Lambertian sky and
 * all light that leaves counts; what the first surface turns back at once does not.
 *
 * Paths know no absorption. Their lengths in ceramic, stump and stained layer are kept, and each
 * absorption is applied to them at the end, so one path serves them all. Scores belong to the place
 * of entry: sky and collection being alike, that is by reciprocity the light leaving there when the
 * whole surface is lit. Where the body does not change along a direction, one path also stands for
 * every place of entry along it.
 */
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define CERAMIC 2.15
#define STUMP 1.52
#define STUMP_SCATTERING 2.5
#define STUMP_DEPTH 4.0
#define STAIN_DEPTH 0.4
#define PI 3.14159265358979323846
#define BATCHES 20
#define NUDGE 1e-7

enum { PLATE, STEP, CYLINDER, BALL, BODY };
enum { NOTHING, LIT, BACK, GONE };

/* Absorption: plate of .003, .03, .15 on a light, dark or black stump; stains of .1, .4, 1.2. */
static const double MUA[3] = {0.003, 0.03, 0.15};
static const double STUMP_MUA[2] = {0.243, 1.600};
#define CONFS 9
#define STAINS 3

/* ---- random numbers: xoshiro256+ (Blackman and Vigna 2018), seeded by splitmix64 */

static uint64_t state[4];

static void seed_random(uint64_t seed) {
    for (int k = 0; k < 4; k++) {
        seed += 0x9e3779b97f4a7c15ULL;
        uint64_t z = seed;
        z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9ULL;
        z = (z ^ (z >> 27)) * 0x94d049bb133111ebULL;
        state[k] = z ^ (z >> 31);
    }
}

static inline double uniform(void) {
    const uint64_t sum = state[0] + state[3], t = state[1] << 17;
    state[2] ^= state[0];
    state[3] ^= state[1];
    state[1] ^= state[2];
    state[0] ^= state[3];
    state[2] ^= t;
    state[3] = (state[3] << 45) | (state[3] >> 19);
    return ((double)(sum >> 11) + 0.5) * 0x1.0p-53;
}

/* ---- the body */

typedef struct { double x, y, z; } Vec;

static inline Vec vec(double x, double y, double z) { return (Vec){x, y, z}; }
static inline double dot(Vec a, Vec b) { return a.x * b.x + a.y * b.y + a.z * b.z; }
static inline Vec along(Vec p, Vec u, double d) {
    return vec(p.x + u.x * d, p.y + u.y * d, p.z + u.z * d);
}
static inline Vec cross(Vec a, Vec b) {
    return vec(a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x);
}
static inline Vec times(Vec a, double k) { return vec(a.x * k, a.y * k, a.z * k); }

typedef struct { Vec corner, side1, side2, normal; int lit; } Facet;

static double scattering, thickness, radius, thin = 0.6, thick = 1.5, cut = 12.0;
static int concave;
static Facet *facets;
static int facet_count, cells[3], *cell_start, *cell_facets;
static double cell_mm, floor_offset;
static Vec low, floor_axis;
static float *clearance; /* how far from anything every point of a cell is at least */

static inline int cell_of(Vec p) {
    const int i = (int)floor((p.x - low.x) / cell_mm), j = (int)floor((p.y - low.y) / cell_mm),
              k = (int)floor((p.z - low.z) / cell_mm);
    if (i < 0 || j < 0 || k < 0 || i >= cells[0] || j >= cells[1] || k >= cells[2]) return -1;
    return (i * cells[1] + j) * cells[2] + k;
}

/* Nearest facet ahead that is met from the wanted side, within *d; its distance goes into *d. */
static int facet_ahead(Vec p, Vec u, double *d, int from_within, int but) {
    int at = cell_of(p), found = -1;
    if (at < 0 || clearance[at] > *d) return -1;
    const double pos[3] = {p.x - low.x, p.y - low.y, p.z - low.z}, dir[3] = {u.x, u.y, u.z};
    int cell[3], step[3];
    double next[3], per[3];
    for (int a = 0; a < 3; a++) {
        cell[a] = (int)floor(pos[a] / cell_mm);
        step[a] = dir[a] > 0 ? 1 : -1;
        per[a] = fabs(dir[a]) > 1e-12 ? cell_mm / fabs(dir[a]) : 1e30;
        const double edge = (cell[a] + (dir[a] > 0)) * cell_mm;
        next[a] = fabs(dir[a]) > 1e-12 ? (edge - pos[a]) / dir[a] : 1e30;
    }
    for (;;) {
        at = (cell[0] * cells[1] + cell[1]) * cells[2] + cell[2];
        for (int n = cell_start[at]; n < cell_start[at + 1]; n++) {
            const int f = cell_facets[n];
            if (f == but) continue;
            const Facet *t = &facets[f];
            const double facing = dot(u, t->normal);
            if (from_within ? facing <= 0 : facing >= 0) continue;
            const Vec q = cross(u, t->side2);
            const double det = dot(t->side1, q);
            if (fabs(det) < 1e-18) continue;
            const Vec s = along(p, t->corner, -1.0);
            const double v = dot(s, q) / det;
            if (v < -1e-9 || v > 1 + 1e-9) continue;
            const Vec r = cross(s, t->side1);
            const double w = dot(u, r) / det;
            if (w < -1e-9 || v + w > 1 + 1e-9) continue;
            const double far = dot(t->side2, r) / det;
            if (far > -1e-6 && far < *d) {
                *d = fmax(far, 0.0);
                found = f;
            }
        }
        const int a = next[0] < next[1] ? (next[0] < next[2] ? 0 : 2) : (next[1] < next[2] ? 1 : 2);
        if (next[a] > *d) return found;
        cell[a] += step[a];
        if (cell[a] < 0 || cell[a] >= cells[a]) return found;
        next[a] += per[a];
    }
}

/* What is met within *d by a path in ceramic (or in the stump), and the normal there, pointing on. */
static inline __attribute__((always_inline)) int
surface_ahead(const int kind, Vec p, Vec u, int in_ceramic, double *d, Vec *normal, int *facet) {
    int met = NOTHING;
    if (kind == PLATE) {
        if (u.z < 0) {
            const double e = (p.z - (in_ceramic ? 0 : thickness)) / -u.z;
            if (e < *d) *d = e, met = in_ceramic ? LIT : BACK, *normal = vec(0, 0, -1);
        } else if (u.z > 0) {
            const double e = ((in_ceramic ? thickness : thickness + STUMP_DEPTH) - p.z) / u.z;
            if (e < *d) *d = e, met = in_ceramic ? BACK : GONE, *normal = vec(0, 0, 1);
        }
    } else if (kind == STEP) { /* thick to the left of x = 0, thin to the right */
        if (in_ceramic && u.z < 0 && p.z / -u.z < *d)
            *d = p.z / -u.z, met = LIT, *normal = vec(0, 0, -1);
        const double down = in_ceramic ? 1 : -1; /* which way the back is crossed */
        if (u.z * down > 0) {
            double e = (thin - p.z) / u.z;
            if (e > -1e-12 && e < *d && p.x + e * u.x > 0) *d = e, met = BACK, *normal = vec(0, 0, down);
            e = (thick - p.z) / u.z;
            if (e > -1e-12 && e < *d && p.x + e * u.x <= 0) *d = e, met = BACK, *normal = vec(0, 0, down);
        }
        if (u.x * down > 0 && p.x * down < 0) {
            const double e = -p.x / u.x, z = p.z + e * u.z;
            if (e < *d && z > thin && z < thick) *d = e, met = BACK, *normal = vec(down, 0, 0);
        }
        if (!in_ceramic && u.z > 0 && (thick + STUMP_DEPTH - p.z) / u.z < *d)
            *d = (thick + STUMP_DEPTH - p.z) / u.z, met = GONE;
    } else if (kind == CYLINDER || kind == BALL) {
        const double flat = kind == BALL ? 1 : 0;
        const double inner = concave ? radius : radius - thickness;
        const double outer = concave ? radius + thickness : radius;
        const double A = u.x * u.x + u.z * u.z + flat * u.y * u.y;
        const double B = p.x * u.x + p.z * u.z + flat * p.y * u.y;
        const double C = p.x * p.x + p.z * p.z + flat * p.y * p.y;
        const double r = sqrt(C);
        double limit = -1; /* the sphere that is left, or entered */
        int inwards = 0;
        if (A < 1e-14) return NOTHING;
        const double inward = B < 0 ? B * B - A * (C - inner * inner) : -1;
        const double outward_radius = in_ceramic ? outer : concave ? outer + STUMP_DEPTH : inner;
        if (in_ceramic || !concave) {
            if (in_ceramic && r - *d < inner && inward > 0) {
                const double e = fmax((-B - sqrt(inward)) / A, 0);
                if (e < *d) *d = e, limit = inner, inwards = 1;
            }
            if (r + *d > outward_radius) {
                const double q = B * B - A * (C - outward_radius * outward_radius);
                const double e = fmax((-B + sqrt(fmax(q, 0))) / A, 0);
                if (e < *d) *d = e, limit = outward_radius, inwards = 0;
            }
        } else { /* stump around a hollow */
            const double q = B < 0 ? B * B - A * (C - outer * outer) : -1;
            if (q > 0) {
                const double e = fmax((-B - sqrt(q)) / A, 0);
                if (e < *d) *d = e, limit = outer, inwards = 1;
            }
            if (limit < 0 && r + *d > outward_radius) return GONE;
        }
        if (limit < 0) return NOTHING;
        const Vec at = along(p, u, *d);
        const double size = sqrt(at.x * at.x + at.z * at.z + flat * at.y * at.y);
        *normal = times(vec(at.x, flat * at.y, at.z), (inwards ? -1 : 1) / size);
        met = in_ceramic && limit == radius ? LIT : BACK;
    } else {
        const int hit = facet_ahead(p, u, d, in_ceramic, *facet);
        if (hit >= 0) {
            *facet = hit;
            *normal = in_ceramic ? facets[hit].normal : times(facets[hit].normal, -1);
            met = facets[hit].lit ? (in_ceramic ? LIT : GONE) : BACK;
        } else if (!in_ceramic) {
            const Vec at = along(p, u, *d);
            if (dot(at, floor_axis) < floor_offset || cell_of(at) < 0) met = GONE;
        }
    }
    return met;
}

/* ---- a path */

static inline double fresnel(double n1, double n2, double c, double *through) {
    const double ratio = n1 / n2, sine2 = ratio * ratio * (1 - c * c);
    if (sine2 >= 1) return 1;
    const double t = sqrt(1 - sine2);
    const double s = (n1 * c - n2 * t) / (n1 * c + n2 * t), p = (n1 * t - n2 * c) / (n1 * t + n2 * c);
    *through = t;
    return 0.5 * (s * s + p * p);
}

static inline Vec isotropic(void) {
    const double z = 2 * uniform() - 1, s = sqrt(1 - z * z), a = 2 * PI * uniform();
    return vec(s * cos(a), s * sin(a), z);
}

/* Lambertian light that got through the first surface, about the direction `in`; 0 if turned back. */
static int enters(Vec in, Vec *u) {
    const double c = sqrt(uniform()), a = 2 * PI * uniform();
    double t = 0;
    if (uniform() < fresnel(1, CERAMIC, c, &t)) return 0;
    const Vec help = fabs(in.x) < 0.6 ? vec(1, 0, 0) : vec(0, 1, 0);
    Vec e = cross(in, help);
    e = times(e, 1 / sqrt(dot(e, e)));
    const Vec f = cross(in, e);
    const double s = sqrt(1 - c * c) / CERAMIC;
    *u = times(in, t);
    *u = along(*u, e, s * cos(a));
    *u = along(*u, f, s * sin(a));
    return 1;
}

static double length_ceramic, length_stump;
static int been_in_stump;
static long lost;

/* Stained layer: where a path has been in it. */
#define CELLS 2401
static double where_x[CELLS], where_y[CELLS], cell_of_stain;
static int used_from, used_to;
typedef struct { Vec direction; double length; } Piece;
#define PIECES 40000
static Piece pieces[PIECES];
static int piece_count;

static inline void put(double *into, double a, double b, double length) {
    /* Share a length out evenly between a and b; bins have their edges at odd half steps. */
    if (a > b) { const double swap = a; a = b; b = swap; }
    const double half = CELLS / 2 + 0.5, from = a / cell_of_stain + half, to = b / cell_of_stain + half;
    int i = (int)from, j = (int)to;
    i = i < 0 ? 0 : i >= CELLS ? CELLS - 1 : i;
    j = j < 0 ? 0 : j >= CELLS ? CELLS - 1 : j;
    if (i < used_from) used_from = i;
    if (j > used_to) used_to = j;
    if (i == j) { into[i] += length; return; }
    const double density = length / (to - from);
    into[i] += (i + 1 - from) * density;
    for (int k = i + 1; k < j; k++) into[k] += density;
    into[j] += (to - j) * density;
}

static inline __attribute__((always_inline)) void stained(const int kind, Vec p, Vec u, double d) {
    if (kind == PLATE) {
        double a = 0, b = d;
        if (u.z > 0) b = fmin(b, (STAIN_DEPTH - p.z) / u.z);
        else if (u.z < 0) a = fmax(a, (STAIN_DEPTH - p.z) / u.z);
        else if (p.z > STAIN_DEPTH) return;
        if (b <= a) return;
        put(where_x, p.x + a * u.x, p.x + b * u.x, b - a);
        put(where_y, p.y + a * u.y, p.y + b * u.y, b - a);
    } else {
        const int parts = (int)(d / (kind == BALL ? 0.05 : 0.025)) + 1;
        const double length = d / parts;
        for (int k = 0; k < parts; k++) {
            const Vec q = along(p, u, (k + 0.5) * length);
            const double r = sqrt(q.x * q.x + q.z * q.z + (kind == BALL ? q.y * q.y : 0));
            if (concave ? r > radius + STAIN_DEPTH : r < radius - STAIN_DEPTH) continue;
            if (kind == BALL) {
                if (piece_count < PIECES) pieces[piece_count++] = (Piece){times(q, 1 / r), length};
            } else {
                const double s = atan2(q.x, q.z) * radius;
                put(where_x, s, s, length);
                put(where_y, q.y, q.y, length);
            }
        }
    }
}

static inline void forget_stain(void) {
    for (int k = used_from; k <= used_to; k++) where_x[k] = where_y[k] = 0;
    used_from = CELLS, used_to = -1, piece_count = 0;
}

/* Follow a path that has entered; 1 if it leaves by the lit surface. */
static inline __attribute__((always_inline)) int
follow(const int kind, const int keep, Vec p, Vec u, int facet) {
    int in_ceramic = 1;
    double left = -log(uniform()) / scattering;
    length_ceramic = length_stump = 0, been_in_stump = 0;
    for (int n = 0; n < 200000; n++) {
        double d = left;
        Vec normal = vec(0, 0, 0);
        const int met = surface_ahead(kind, p, u, in_ceramic, &d, &normal, &facet);
        if (met == GONE) return 0;
        if (in_ceramic) {
            length_ceramic += d;
            if (keep) stained(kind, p, u, d);
        } else length_stump += d;
        p = along(p, u, d);
        if (met == NOTHING) {
            u = isotropic();
            facet = -1;
            left = -log(uniform()) / (in_ceramic ? scattering : STUMP_SCATTERING);
            if (length_ceramic * MUA[0] + length_stump * STUMP_MUA[0] > cut) return 0;
            continue;
        }
        left -= d;
        const double c = dot(u, normal);
        const double n1 = in_ceramic ? CERAMIC : STUMP;
        const double n2 = met == LIT ? 1 : in_ceramic ? STUMP : CERAMIC;
        double t = 0;
        const int back = uniform() < fresnel(n1, n2, c, &t);
        if (back) {
            u = along(u, normal, -2 * c);
        } else {
            if (met == LIT) return 1;
            u = along(times(u, n1 / n2), normal, t - n1 / n2 * c);
            in_ceramic = !in_ceramic;
            been_in_stump = 1;
            left = -log(uniform()) / (in_ceramic ? scattering : STUMP_SCATTERING);
        }
        p = along(p, normal, back ? -NUDGE : NUDGE);
    }
    lost++;
    return 0;
}

/* Weights of the nine combinations of plate and stump. */
static void weigh(double *w) {
    for (int k = 0; k < 3; k++) {
        const double plate = exp(-MUA[k] * length_ceramic);
        w[3 * k] = plate * exp(-STUMP_MUA[0] * length_stump);
        w[3 * k + 1] = plate * exp(-STUMP_MUA[1] * length_stump);
        w[3 * k + 2] = been_in_stump ? 0 : plate;
    }
}

static double *zeros(size_t count) {
    double *made = calloc(count, sizeof(double));
    if (!made) exit(2);
    return made;
}

/* exp(-.1 L), exp(-.4 L), exp(-1.2 L) of one length. */
static inline void stains_of(double length, double *e) {
    const double a = exp(-0.1 * length), b = a * a;
    e[0] = a, e[1] = b * b, e[2] = e[1] * e[1] * e[1];
}

/* ---- runs; each writes float64 to stdout */

/* Running totals of a histogram of the stained layer, valid from one cell to another. */
static double total[CELLS + 1];
static void add_up(const double *where, int from, int to) {
    /* Nothing lies outside the used cells. */
    for (int k = from; k <= to + 1; k++) total[k] = 0;
    double sum = 0;
    for (int k = used_from < from ? used_from : from; k <= to; k++) {
        if (k >= used_from && k <= used_to) sum += where[k];
        if (k + 1 >= from) total[k + 1] = sum;
    }
}

static double add_all(const double *where) {
    double sum = 0;
    for (int k = used_from; k <= used_to; k++) sum += where[k];
    return sum;
}

/* Plate, evenly stained: [batch, conf, 1 + 3 stains], and stained in part:
 * [batch, 4 confs, (edge, strip .3, strip .6) x 3 stains x 160 bins]. */
#define BINS 160
#define EVEN (1 + STAINS)
#define SHAPES (3 * STAINS * BINS)
static const int PARTLY[4] = {3, 0, 6, 4};
static void plate(long photons) {
    cell_of_stain = 0.05;
    double *even = zeros(BATCHES * CONFS * EVEN), *parts = zeros(BATCHES * 4 * SHAPES);
    static double length[6][BINS], e[6][BINS], row[SHAPES];
    forget_stain();
    for (long n = 0; n < photons; n++) {
        Vec u;
        if (!enters(vec(0, 0, 1), &u)) continue;
        const Vec p = vec(0.05 * (uniform() - 0.5), 0.05 * (uniform() - 0.5), NUDGE);
        if (follow(PLATE, 1, p, u, -1)) {
            double w[CONFS], flat[EVEN] = {1};
            weigh(w);
            const int batch = n * BATCHES / photons, middle = CELLS / 2;
            const double all = add_all(where_x);
            stains_of(all, flat + 1);
            for (int c = 0; c < CONFS; c++)
                for (int k = 0; k < EVEN; k++) even[(batch * CONFS + c) * EVEN + k] += w[c] * flat[k];
            memset(row, 0, sizeof row);
            for (int axis = 0; axis < 2; axis++) {
                add_up(axis ? where_y : where_x, middle - 90, middle + 90);
                /* Entry in bin k, whose middle is (k - 79.5) bins from x = 0 of the stain; that
                 * lies at an edge of cells here. Edge, and edge for the mirrored path; strips. */
                for (int k = 0; k < BINS; k++) {
                    const double *zero = total + middle + 80 - k;
                    length[0][k] = all - zero[0];
                    length[1][k] = total[middle - 79 + k];
                    length[2][k] = length[3][BINS - 1 - k] = zero[3] - zero[-3];
                    length[4][k] = length[5][BINS - 1 - k] = zero[6] - zero[-6];
                }
                for (int g = 0; g < 6; g++)
                    for (int k = 0; k < BINS; k++) e[g][k] = exp(-0.1 * length[g][k]);
                for (int g = 0; g < 3; g++)
                    for (int side = 0; side < 2; side++) {
                        const double *a = e[2 * g + side];
                        double *into = row + g * STAINS * BINS;
                        for (int k = 0; k < BINS; k++) {
                            const double a2 = a[k] * a[k], a4 = a2 * a2;
                            into[k] += 0.25 * a[k];
                            into[BINS + k] += 0.25 * a4;
                            into[2 * BINS + k] += 0.25 * a4 * a4 * a4;
                        }
                    }
            }
            for (int c = 0; c < 4; c++) {
                double *into = parts + (batch * 4 + c) * SHAPES;
                const double weight = w[PARTLY[c]];
                for (int k = 0; k < SHAPES; k++) into[k] += weight * row[k];
            }
        }
        forget_stain();
    }
    const double share = (double)BATCHES / photons;
    for (long k = 0; k < BATCHES * CONFS * EVEN; k++) even[k] *= share;
    for (long k = 0; k < BATCHES * 4 * SHAPES; k++) parts[k] *= share;
    fwrite(even, sizeof(double), BATCHES * CONFS * EVEN, stdout);
    fwrite(parts, sizeof(double), BATCHES * 4 * SHAPES, stdout);
}

/* Level: [batch, conf + 1]; the last is the mean path in ceramic per incident ray. */
static void level(const int kind, long photons) {
    double sum[BATCHES][CONFS + 1] = {{0}};
    for (long n = 0; n < photons; n++) {
        Vec u, p;
        if (kind == PLATE) {
            p = vec(0, 0, NUDGE);
            if (!enters(vec(0, 0, 1), &u)) continue;
        } else {
            p = vec(0, 0, radius + (concave ? NUDGE : -NUDGE));
            if (!enters(vec(0, 0, concave ? 1 : -1), &u)) continue;
        }
        const int out = kind == PLATE      ? follow(PLATE, 0, p, u, -1)
                        : kind == CYLINDER ? follow(CYLINDER, 0, p, u, -1)
                                           : follow(BALL, 0, p, u, -1);
        double *into = sum[n * BATCHES / photons], w[CONFS];
        if (out) {
            weigh(w);
            for (int c = 0; c < CONFS; c++) into[c] += w[c];
            into[CONFS] += length_ceramic;
        }
    }
    for (int b = 0; b < BATCHES; b++)
        for (int c = 0; c <= CONFS; c++) sum[b][c] /= (double)photons / BATCHES;
    fwrite(sum, sizeof(double), BATCHES * (CONFS + 1), stdout);
}

/* Step of the wall: [batch, conf, 80 bins of 0.1 over |x| < 4]. */
#define STEP_BINS 80
static void step(long photons) {
    double *sum = zeros(BATCHES * CONFS * STEP_BINS), *count = zeros(BATCHES * STEP_BINS);
    for (long n = 0; n < photons; n++) {
        const int bin = (int)(n % STEP_BINS), batch = (int)(n * BATCHES / photons);
        Vec u;
        count[batch * STEP_BINS + bin]++;
        if (!enters(vec(0, 0, 1), &u)) continue;
        const Vec p = vec((bin + uniform()) * 0.1 - 4, 0, NUDGE);
        if (!follow(STEP, 0, p, u, -1)) continue;
        double w[CONFS];
        weigh(w);
        for (int c = 0; c < CONFS; c++) sum[(batch * CONFS + c) * STEP_BINS + bin] += w[c];
    }
    for (int b = 0; b < BATCHES; b++)
        for (int c = 0; c < CONFS; c++)
            for (int k = 0; k < STEP_BINS; k++)
                sum[(b * CONFS + c) * STEP_BINS + k] /= count[b * STEP_BINS + k];
    fwrite(sum, sizeof(double), BATCHES * CONFS * STEP_BINS, stdout);
}

/* Shell with a strip of 0.6: [batch, kind, conf, 1 + 3 stains x 30 bins of 0.1 from its middle].
 * Kind 0 lies along the axis of a cylinder (or around the equator of a ball), 1 rings the cylinder. */
#define SHELL_BINS 30
#define SHELL_ROW (1 + STAINS * SHELL_BINS)
static void shell(const int kind, long photons) {
    cell_of_stain = 0.1;
    double *sum = zeros(BATCHES * 2 * CONFS * SHELL_ROW), row[SHELL_ROW];
    forget_stain();
    for (long n = 0; n < photons; n++) {
        const double across = 0.1 * (uniform() - 0.5), f = across / radius;
        const Vec out = kind == BALL ? vec(0, 0, 1) : vec(sin(f), 0, cos(f));
        Vec u, p = times(out, radius + (concave ? NUDGE : -NUDGE));
        if (!enters(times(out, concave ? 1 : -1), &u)) continue;
        const double y = 0.1 * (uniform() - 0.5);
        if (kind == CYLINDER) p.y = y;
        if (kind == BALL ? follow(BALL, 1, p, u, -1) : follow(CYLINDER, 1, p, u, -1)) {
            double w[CONFS], e[STAINS];
            weigh(w);
            double *into = sum + (n * BATCHES / photons) * 2 * CONFS * SHELL_ROW;
            for (int which = 0; which < (kind == BALL ? 1 : 2); which++) {
                row[0] = 1;
                double lengths[SHELL_BINS] = {0};
                if (kind == BALL) {
                    const double a = 2 * PI * uniform();
                    for (int k = 0; k < SHELL_BINS; k++) {
                        const double latitude = (k + uniform()) * 0.1 / radius, c = cos(latitude);
                        const Vec pole = vec(c * cos(a), c * sin(a), sin(latitude));
                        const double within = sin(0.3 / radius);
                        double length = 0;
                        for (int q = 0; q < piece_count; q++)
                            length += fabs(dot(pieces[q].direction, pole)) < within ? pieces[q].length : 0;
                        lengths[k] = length;
                    }
                } else {
                    const double *where = which ? where_y : where_x;
                    add_up(where, CELLS / 2 - 40, CELLS / 2 + 40);
                    for (int k = 0; k < SHELL_BINS; k++) {
                        const int there = CELLS / 2 + 1 + k, here = CELLS / 2 - k;
                        lengths[k] = total[there + 3] - total[there - 3];
                        stains_of(total[here + 3] - total[here - 3], e);
                        for (int m = 0; m < STAINS; m++) row[1 + m * SHELL_BINS + k] = e[m];
                    }
                }
                for (int k = 0; k < SHELL_BINS; k++) {
                    stains_of(lengths[k], e);
                    for (int m = 0; m < STAINS; m++) {
                        double *at = row + 1 + m * SHELL_BINS + k;
                        *at = kind == BALL ? e[m] : 0.5 * (*at + e[m]);
                    }
                }
                for (int c = 0; c < CONFS; c++)
                    for (int k = 0; k < SHELL_ROW; k++)
                        into[(which * CONFS + c) * SHELL_ROW + k] += w[c] * row[k];
            }
        }
        forget_stain();
    }
    for (long k = 0; k < BATCHES * 2 * CONFS * SHELL_ROW; k++) sum[k] /= (double)photons / BATCHES;
    fwrite(sum, sizeof(double), BATCHES * 2 * CONFS * SHELL_ROW, stdout);
}

/* Body of triangles, read from a file: [place of entry, conf, sum and sum of squares] / photons. */
static void *read_some(FILE *file, size_t size, size_t count) {
    void *into = malloc(size * count + 1);
    if (!into || fread(into, size, count, file) != count) {
        fprintf(stderr, "light_transport: the file of the body is too short\n");
        exit(2);
    }
    return into;
}

static void body(long photons, const char *path) {
    FILE *file = fopen(path, "rb");
    if (!file) { perror(path); exit(2); }
    int32_t *head = read_some(file, 4, 6); /* facets, places, cells x y z, entries of cells */
    double *frame = read_some(file, 8, 8); /* low corner, cell, axis of the floor, its offset */
    facet_count = head[0];
    const int places = head[1];
    for (int a = 0; a < 3; a++) cells[a] = head[2 + a];
    const size_t all = (size_t)cells[0] * cells[1] * cells[2];
    low = vec(frame[0], frame[1], frame[2]), cell_mm = frame[3];
    floor_axis = vec(frame[4], frame[5], frame[6]), floor_offset = frame[7];
    double *corners = read_some(file, 8, 9 * (size_t)facet_count);
    int32_t *lit = read_some(file, 4, facet_count);
    cell_start = read_some(file, 4, all + 1);
    cell_facets = read_some(file, 4, head[5]);
    clearance = read_some(file, 4, all);
    double *entry = read_some(file, 8, 3 * (size_t)places);
    int32_t *entry_facet = read_some(file, 4, places);
    facets = calloc(facet_count, sizeof(Facet));
    for (int f = 0; f < facet_count; f++) {
        const double *c = corners + 9 * f;
        Facet *t = &facets[f];
        t->corner = vec(c[0], c[1], c[2]);
        t->side1 = vec(c[3] - c[0], c[4] - c[1], c[5] - c[2]);
        t->side2 = vec(c[6] - c[0], c[7] - c[1], c[8] - c[2]);
        const Vec n = cross(t->side1, t->side2);
        t->normal = times(n, 1 / fmax(sqrt(dot(n, n)), 1e-30));
        t->lit = lit[f];
    }
    double *sum = zeros((size_t)places * CONFS * 2);
    for (int k = 0; k < places; k++) {
        const int f = entry_facet[k];
        const Vec in = times(facets[f].normal, -1), at = vec(entry[3 * k], entry[3 * k + 1], entry[3 * k + 2]);
        for (long n = 0; n < photons; n++) {
            Vec u;
            if (!enters(in, &u) || !follow(BODY, 0, along(at, in, NUDGE), u, f)) continue;
            double w[CONFS];
            weigh(w);
            for (int c = 0; c < CONFS; c++) {
                sum[(k * CONFS + c) * 2] += w[c] / photons;
                sum[(k * CONFS + c) * 2 + 1] += w[c] * w[c] / photons;
            }
        }
    }
    fwrite(sum, sizeof(double), (size_t)places * CONFS * 2, stdout);
}

int main(int count, char **word) {
    if (count < 5) {
        fprintf(stderr, "light_transport RUN SEED PHOTONS SCATTERING [THICKNESS [RADIUS]] | BODY\n"
                        "RUN: plate, level, step, cylinder, ball, groove, shell-cylinder, shell-ball,\n"
                        "shell-groove, body; see README.md\n");
        return 2;
    }
    const char *run = word[1];
    seed_random(strtoull(word[2], NULL, 10));
    const long photons = (long)strtod(word[3], NULL) / BATCHES * BATCHES;
    scattering = strtod(word[4], NULL);
    if (!strcmp(run, "body")) {
        body(photons, count > 5 ? word[5] : "");
    } else {
        thickness = count > 5 ? strtod(word[5], NULL) : 1;
        radius = count > 6 ? strtod(word[6], NULL) : 3;
        if (count > 7) cut = strtod(word[7], NULL);
        concave = strstr(run, "groove") != NULL;
        if (!strcmp(run, "plate")) plate(photons);
        else if (!strcmp(run, "step")) step(photons);
        else if (!strcmp(run, "level")) level(PLATE, photons);
        else if (!strcmp(run, "cylinder") || !strcmp(run, "groove")) level(CYLINDER, photons);
        else if (!strcmp(run, "ball")) level(BALL, photons);
        else if (!strcmp(run, "shell-cylinder") || !strcmp(run, "shell-groove")) shell(CYLINDER, photons);
        else if (!strcmp(run, "shell-ball")) shell(BALL, photons);
        else return 2;
    }
    if (lost) fprintf(stderr, "light_transport: %ld paths given up\n", lost);
    return 0;
}
