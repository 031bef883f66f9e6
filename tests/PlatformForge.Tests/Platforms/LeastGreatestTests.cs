using PlatformForge.Platforms.Surfaces;
using Xunit;

namespace PlatformForge.Tests.Platforms;

/// <summary>The least greatest of affine forms, held to a theorem.</summary>
public class LeastGreatestTests
{
    /// <summary>
    /// Of all polynomials that begin with xⁿ none keeps nearer to nil from −1 to 1 than by 2^(1−n), and one does (P. L. Chebyshev, 1854; any handbook of
    /// approximation). Where it comes to that, cos(kπ/n), is among the places for n of 2 and 3.
    /// </summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void A_polynomial_keeps_as_near_to_nil_as_Chebyshev_s_and_no_nearer(int degree)
    {
        double[] places = [.. Enumerable.Range(0, 41).Select(i => -1 + (i / 20.0))];
        double[][] rows = [.. places.Select(x => Enumerable.Range(0, degree + 1).Select(k => Math.Pow(x, k)).ToArray())];
        double[] found = LeastGreatest.Solve(rows, degree);
        double worst = rows.Max(r => Math.Abs(r[degree] + Enumerable.Range(0, degree).Sum(k => r[k] * found[k]))), least = Math.Pow(2, 1 - degree);
        Assert.InRange(worst, least * (1 - 1e-9), least * 1.02);
    }

    /// <summary>Of forms that can all be made nil at once, all are.</summary>
    [Fact]
    public void Forms_that_agree_are_made_nil()
    {
        var random = new Random(3);
        double[] wanted = [2, -0.5, 7];
        double[][] rows = [.. Enumerable.Range(0, 9).Select(_ =>
        {
            double[] factors = [random.NextDouble() - 0.5, random.NextDouble() - 0.5, random.NextDouble() - 0.5];
            return (double[])[.. factors, -factors.Zip(wanted, (f, w) => f * w).Sum()];
        })];
        double[] found = LeastGreatest.Solve(rows, 3);
        Assert.All(found, (f, i) => Assert.Equal(wanted[i], f, 1e-6));
    }
}
