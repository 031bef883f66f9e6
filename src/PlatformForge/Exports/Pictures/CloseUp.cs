using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Track;

namespace PlatformForge.Exports.Pictures;

/// <summary>Where the eye is that looks at a stretch of the front from near by, so that its bond, its coping and the deck can be told.</summary>
internal sealed class CloseUp
{
    // The stretch: so many heights of the platform long, within these, mm; the eye so many stretches off, so far from square to it and so steep, radians.
    private const double Heights = 3.2, Shortest = 30, Longest = 110, Off = 2.2, Turn = 0.34, Steep = 0.42;

    // How much of the deck is seen, as a share of the stretch.
    private const double Deep = 0.22;

    private readonly PlatformPlan plan;
    private readonly double from, to;

    public CloseUp(PlatformPlan plan)
    {
        this.plan = plan;
        var profile = plan.Profile;
        double level = profile.EndHead - profile.StartHead, length = Math.Min(Math.Clamp(Heights * profile.Level, Shortest, Longest), level);
        double middle = (profile.StartHead + profile.EndHead) / 2;

        // What tells most of the wall stands in the middle: what stands before it or is open in it, or else an unbroken stretch.
        var shown = plan.Fittings.SelectMany(r => r.Places).Where(p => !p.IsFar).Select(p => p.Middle)
            .Where(s => s > profile.StartHead + (length / 2) && s < profile.EndHead - (length / 2));
        double at = shown.OrderBy(s => Math.Abs(s - middle)).FirstOrDefault(middle);
        (from, to) = (at - (length / 2), at + (length / 2));
    }

    /// <summary>Whether there is more to tell than a smooth wall: a finish or a trestle.</summary>
    public static bool Tells(PlatformPlan plan) => plan.Spec.Facing is not null || plan.Spec.Trestle is not null;

    /// <summary>Corners of a box round all that is seen from there: under a trestle the ground behind the platform too, with the shadows there.</summary>
    public IReadOnlyList<Point3> Seen()
    {
        double middle = (from + to) / 2, length = to - from, far = Math.Max(plan.Outer.At(middle), plan.Back.At(middle)) + plan.Profile.Level;
        double near = plan.CopingFront.At(middle) - (Before * length), wide = (0.5 * length * (1 + ((far - near) / (Off * length)))) + plan.Profile.Level;
        double edge = plan.CopingFront.At(middle), high = plan.Profile.Level + plan.Body.Lines.Select(l => l.Made.Rise).DefaultIfEmpty(0).Max();
        Point2 origin = plan.ToLayout(middle, edge), along = plan.Spine.Tangent(middle) * wide, away = plan.Spine.Away(middle);
        Point2[] corners = [.. new[] { near - edge, far - edge }.SelectMany(d => new[] { origin + (away * d) - along, origin + (away * d) + along })];
        return [.. corners.SelectMany(p => new[] { new Point3(p.X, p.Y, 0), new Point3(p.X, p.Y, high) })];
    }

    // So much of the ground before the platform is seen, as a share of the stretch.
    private const double Before = 0.8;

    /// <summary>Where the eye is, the direction to it, and what has to be in the picture.</summary>
    public (Point3 Eye, Point3 Toward, IReadOnlyList<Point3> Framed) View()
    {
        Point2 a = plan.ToLayout(from, plan.CopingFront.At(from)), b = plan.ToLayout(to, plan.CopingFront.At(to));
        double length = (b - a).Length, deep = Math.Min(Deep * length, plan.Spec.Deck.Width);
        var along = (b - a) * (1 / length);
        var inward = plan.Side.Outward(along);
        Point3 up = new(0, 0, 1), away = new(inward.X, inward.Y, 0), right = Point3.Cross(away, up);
        var target = new Point3((a.X + b.X) / 2, (a.Y + b.Y) / 2, plan.Profile.Level / 2);
        var toward = (((away * -Math.Cos(Turn)) - (right * Math.Sin(Turn))) * Math.Cos(Steep)) + (up * Math.Sin(Steep));
        Point3[] framed =
        [
            .. new[] { a, b }.SelectMany(p => new[] { new Point3(p.X, p.Y, 0), new Point3(p.X, p.Y, plan.Profile.Level) }),
            .. new[] { a, b }.Select(p => p + (inward * deep)).Select(p => new Point3(p.X, p.Y, plan.Profile.Level)),
        ];
        return (target + (toward * (Off * length)), toward, framed);
    }
}
