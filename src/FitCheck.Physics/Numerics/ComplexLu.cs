using System.Numerics;

namespace FitCheck.Physics.Numerics;

/// <summary>Gaussian elimination with partial pivoting for small dense complex systems (any text on numerical linear algebra).</summary>
internal static class ComplexLu
{
    // An exactly lossless resonance makes a pivot vanish. A leak of this conductance (siemens) keeps the answer large but finite.
    private const double Leak = 1e-12;

    /// <summary>Solves A·x = b. A is n × n by rows and is destroyed; b becomes x.</summary>
    public static void Solve(Span<Complex> a, Span<Complex> b, int n)
    {
        for (var column = 0; column < n; column++)
        {
            BringLargestUp(a, b, n, column);
            var pivot = a[(column * n) + column];
            if (Norm(pivot) == 0)
                a[(column * n) + column] = pivot = Leak;
            var inverse = Complex.One / pivot;
            for (var row = column + 1; row < n; row++)
            {
                var factor = a[(row * n) + column] * inverse;
                if (Norm(factor) == 0)
                    continue;
                for (var k = column + 1; k < n; k++)
                    a[(row * n) + k] -= factor * a[(column * n) + k];
                b[row] -= factor * b[column];
            }
        }

        for (var row = n - 1; row >= 0; row--)
        {
            var sum = b[row];
            for (var k = row + 1; k < n; k++)
                sum -= a[(row * n) + k] * b[k];
            b[row] = sum / a[(row * n) + row];
        }
    }

    private static void BringLargestUp(Span<Complex> a, Span<Complex> b, int n, int column)
    {
        var best = column;
        for (var row = column + 1; row < n; row++)
        {
            if (Norm(a[(row * n) + column]) > Norm(a[(best * n) + column]))
                best = row;
        }

        if (best == column)
            return;
        for (var k = column; k < n; k++)
            (a[(column * n) + k], a[(best * n) + k]) = (a[(best * n) + k], a[(column * n) + k]);
        (b[column], b[best]) = (b[best], b[column]);
    }

    // Cheaper than the modulus and as good for choosing a pivot.
    private static double Norm(Complex z) => Math.Abs(z.Real) + Math.Abs(z.Imaginary);
}
