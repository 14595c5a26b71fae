// The two hot loops of the plane's solver in C, for comparison with Go: the same arithmetic on the same layout.
// Prints nanoseconds a cell for conduction and for the inversion of enthalpy.
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#ifdef SPLIT
// Without values carried from cell to cell, so that the compiler can work on several at once.
static double flux[4096];
static void conduct_row(double *restrict out, const double *restrict t, const double *restrict up, const double *restrict gx,
                        const double *restrict gy, double *restrict fd, const double *restrict ix, double iy, int nx) {
	int n = nx - 1;
	flux[0] = 0;
	for (int i = 0; i < n; i++) flux[i + 1] = gx[i] * (t[i + 1] - t[i]);
	flux[nx] = 0;
	for (int i = 0; i < nx; i++) {
		double fu = gy[i] * (up[i] - t[i]);
		out[i] = (flux[i + 1] - flux[i] + fu - fd[i]) * (ix[i] * iy);
		fd[i] = fu;
	}
}
#else
static void conduct_row(double *restrict out, const double *restrict t, const double *restrict up, const double *restrict gx,
                        const double *restrict gy, double *restrict fd, const double *restrict ix, double iy, int nx) {
	int n = nx - 1;
	double fl = 0, here = t[0];
	for (int i = 0; i < n; i++) {
		double next = t[i + 1];
		double fr = gx[i] * (next - here);
		double fu = gy[i] * (up[i] - here);
		out[i] = (fr - fl + fu - fd[i]) * (ix[i] * iy);
		fd[i] = fu;
		fl = fr;
		here = next;
	}
	double fu = gy[n] * (up[n] - here);
	out[n] = (fu - fl - fd[n]) * (ix[n] * iy);
	fd[n] = fu;
}

#endif

static long misses;

static void invert(const double *restrict e, double *restrict t, const double *restrict a, const double *restrict b,
                   const double *restrict lo, const double *restrict hi, int n) {
	for (int i = 0; i < n; i++) {
		double v = e[i];
		if (v < lo[i] || v >= hi[i]) misses++;
		t[i] = a[i] + b[i] * v;
	}
}

static double now(void) {
	struct timespec s;
	clock_gettime(CLOCK_MONOTONIC, &s);
	return s.tv_sec * 1e9 + s.tv_nsec;
}

static double *row(int n, double v) {
	double *p = malloc(n * sizeof *p);
	for (int i = 0; i < n; i++) p[i] = v + (i % 17) * 1e-3;
	return p;
}

int main(int argc, char **argv) {
	int nx = atoi(argv[1]), ny = atoi(argv[2]), rounds = atoi(argv[3]), n = nx * ny;
	double *t = row(n, 500), *out = row(n, 0), *gx = row(n, .04), *gy = row(n, .04), *fd = row(nx, 0), *ix = row(nx, 2);
	double *e = row(n, 4), *a = row(n, 20), *b = row(n, 100), *lo = row(n, -1), *hi = row(n, 9);
	double best[2] = {1e300, 1e300};
	for (int r = 0; r < rounds; r++) {
		double at = now();
		for (int k = 0; k < 20; k++) {
			for (int i = 0; i < nx; i++) fd[i] = 0;
			for (int j = 0; j < ny; j++)
				conduct_row(out + j * nx, t + j * nx, t + (j == ny - 1 ? j : j + 1) * nx, gx + j * nx, gy + j * nx, fd, ix, 2, nx);
		}
		double mid = now();
		for (int k = 0; k < 20; k++) invert(e, t, a, b, lo, hi, n);
		double end = now();
		if ((mid - at) / 20 / n < best[0]) best[0] = (mid - at) / 20 / n;
		if ((end - mid) / 20 / n < best[1]) best[1] = (end - mid) / 20 / n;
	}
	printf("%.4f %.4f %g %ld\n", best[0], best[1], out[n / 2] + t[n / 2], misses);
	return 0;
}
