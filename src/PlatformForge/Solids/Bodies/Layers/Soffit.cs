namespace PlatformForge.Solids.Bodies.Layers;

/// <summary>The underside of a bearer along a bay, mm: heights over the baseboard at distances, rising, from the post that a brace begins at; straight
/// between them.</summary>
public sealed record Soffit(IReadOnlyList<(double Along, double Height)> Points)
{
    /// <summary>The steepest it rises away from the post: of its run, 0 at least.</summary>
    public double Steepest => Points.Zip(Points.Skip(1), (a, b) => (b.Height - a.Height) / (b.Along - a.Along)).Append(0).Max();

    /// <summary>Its height at a distance; beyond its ends, that of the end.</summary>
    public double At(double along)
    {
        int next = 1;
        while (next < Points.Count - 1 && Points[next].Along < along)
        {
            next++;
        }

        var (a, b) = (Points[next - 1], Points[next]);
        return a.Height + (Math.Clamp((along - a.Along) / (b.Along - a.Along), 0, 1) * (b.Height - a.Height));
    }

    /// <summary>Where a line meets it that begins below it at the post and rises; null where it does not.</summary>
    public double? Met(double foot, double rise)
    {
        for (int i = 0; i + 1 < Points.Count; i++)
        {
            var (a, b) = (Points[i], Points[i + 1]);
            double slope = (b.Height - a.Height) / (b.Along - a.Along), at = (a.Height - foot - (slope * a.Along)) / (rise - slope);
            if (at >= a.Along && at <= b.Along)
            {
                return at;
            }
        }

        return null;
    }
}
