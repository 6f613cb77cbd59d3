package ode

// The tableau of Dormand & Prince, A family of embedded Runge-Kutta formulae,
// J. Comp. Appl. Math. 6 (1980) 19-26, as printed in Hairer, Nørsett & Wanner,
// Solving Ordinary Differential Equations I, table II.5.2. The last row of a is
// the fifth-order solution, so that the rates at its end serve the next step;
// e is that solution less the one of fourth order.
const (
	c2, c3, c4, c5 = 1. / 5, 3. / 10, 4. / 5, 8. / 9

	a21                     = 1. / 5
	a31, a32                = 3. / 40, 9. / 40
	a41, a42, a43           = 44. / 45, -56. / 15, 32. / 9
	a51, a52, a53, a54      = 19372. / 6561, -25360. / 2187, 64448. / 6561, -212. / 729
	a61, a62, a63, a64, a65 = 9017. / 3168, -355. / 33, 46732. / 5247, 49. / 176, -5103. / 18656
	b1, b3, b4, b5, b6      = 35. / 384, 500. / 1113, 125. / 192, -2187. / 6784, 11. / 84

	e1, e3, e4 = b1 - 5179./57600, b3 - 7571./16695, b4 - 393./640
	e5, e6, e7 = b5 + 92097./339200, b6 - 187./2100, -1. / 40
)
