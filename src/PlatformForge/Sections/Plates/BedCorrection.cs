using PlatformForge.Geometry;
using PlatformForge.Sections.Forms;

namespace PlatformForge.Sections.Plates;

/// <summary>
/// Takes what a printer gets wrong along and across its bed into the pieces. It is a fault of the bed's axes and not of the piece's, so a piece is first turned
/// to lie in its file as it lies on its bed; from then on it may be shifted and not turned.
/// </summary>
internal static class BedCorrection
{
    /// <summary>Sections and beds with the correction in them; as they were where there is none.</summary>
    /// <param name="sections">All sections by number.</param>
    /// <param name="plates">The beds, in millimetres as they come out.</param>
    /// <param name="by">Made longer along the bed's x and y.</param>
    public static (PlatformSection[] Sections, IReadOnlyList<Plate> Plates) Baked(PlatformSection[] sections, IReadOnlyList<Plate> plates, Point2 by)
    {
        if (by == new Point2(1, 1))
        {
            return (sections, plates);
        }

        Plate[] baked = [.. plates.Select(plate => plate with { Sections = [.. plate.Sections.Select(p => Baked(p, by))] })];
        var turned = baked.SelectMany(p => p.Sections).ToDictionary(p => p.Section.Number, p => p.Section);
        return ([.. sections.Select(s => turned.GetValueOrDefault(s.Number, s with { Stretch = by }))], baked);
    }

    private static PlacedSection Baked(PlacedSection placed, Point2 by)
    {
        var (motion, corner) = AsItLies(placed.Section.Hull, placed.ToBed);
        Point2[] hull = [.. placed.Section.Hull.Select(p => Flat(motion, p))];
        var section = placed.Section with
        {
            Stretch = by,
            ToLayout = motion.Inverse().Then(placed.Section.ToLayout),
            Hull = hull,
            Size = new(hull.Max(p => p.X), hull.Max(p => p.Y), placed.Section.Size.Z),
            Overhangs = placed.Section.Overhangs with { LargestAt = motion.Apply(placed.Section.Overhangs.LargestAt) },
        };
        return new(section, RigidTransform.Shift(corner.X * by.X, corner.Y * by.Y, 0));
    }

    /// <summary>A motion to the bed parted in two: what turns the piece, its least corner at the origin after it, and where on the bed that corner
    /// lies.</summary>
    public static (RigidTransform Turn, Point2 Corner) AsItLies(IReadOnlyList<Point2> hull, RigidTransform toBed)
    {
        double x = hull.Min(p => Flat(toBed, p).X), y = hull.Min(p => Flat(toBed, p).Y);
        return (toBed.Then(RigidTransform.Shift(-x, -y, 0)), new(x, y));
    }

    private static Point2 Flat(RigidTransform motion, Point2 p)
    {
        var at = motion.Apply(new(p.X, p.Y, 0));
        return new(at.X, at.Y);
    }
}
