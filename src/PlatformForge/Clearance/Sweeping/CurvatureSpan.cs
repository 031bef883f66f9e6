using PlatformForge.Track;

namespace PlatformForge.Clearance.Sweeping;

/// <summary>
/// How much a line bends within a stretch.
/// </summary>
/// <param name="Least">Least curvature, 1/mm, left positive.</param>
/// <param name="Most">Greatest curvature, 1/mm.</param>
/// <param name="Rate">Greatest change of curvature per mm within an element, 1/mm².</param>
/// <param name="KinkTurn">Sum of the turns of its kinks, radians, whatever their hand.</param>
internal readonly record struct CurvatureSpan(double Least, double Most, double Rate, double KinkTurn)
{
    /// <summary>Whether it is a straight or one circular curve throughout.</summary>
    public bool IsUniform => Least == Most && Rate == 0 && KinkTurn == 0;

    /// <summary>Both stretches together.</summary>
    public CurvatureSpan Join(in CurvatureSpan other) =>
        new(Math.Min(Least, other.Least), Math.Max(Most, other.Most), Math.Max(Rate, other.Rate), KinkTurn + other.KinkTurn);

    /// <summary>Span of a line from one chainage up to, not including, another.</summary>
    public static CurvatureSpan Over(Centreline line, double from, double to)
    {
        double turn = 0;
        foreach (var kink in line.Kinks)
        {
            turn += kink.Chainage >= from && kink.Chainage < to ? Math.Abs(kink.Turn) : 0;
        }

        double least = double.PositiveInfinity, most = double.NegativeInfinity, rate = 0;
        if (from < 0 || to > line.Length)
        {
            (least, most) = (0, 0); // straight beyond the ends
        }

        for (int i = line.ElementAt(Math.Max(0, from)); i < line.Elements.Count && line.StartOf(i) <= to && to >= 0 && from <= line.Length; i++)
        {
            var element = line.Elements[i];
            double a = element.CurvatureAt(Math.Clamp(from - line.StartOf(i), 0, element.Length));
            double b = element.CurvatureAt(Math.Clamp(to - line.StartOf(i), 0, element.Length));
            least = Math.Min(least, Math.Min(a, b));
            most = Math.Max(most, Math.Max(a, b));
            rate = Math.Max(rate, Math.Abs(element.EndCurvature - element.StartCurvature) / element.Length);
        }

        return new(least, most, rate, turn);
    }
}
