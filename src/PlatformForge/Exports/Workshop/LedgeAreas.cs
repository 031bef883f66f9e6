using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies.Walls;

namespace PlatformForge.Exports.Workshop;

/// <summary>The upper sides of what stands out of a wall's foot: steps of plinths, and courses of walls that lean. A brush gets there, though the
/// coping is over them.</summary>
internal static class LedgeAreas
{
    // An edge so near to its part's head, mm, is not cut by a ramp's slope.
    private const double Same = 0.01;

    /// <summary>Areas of a section's ledges, mm², each with what it shows.</summary>
    public static IEnumerable<(Paint Shown, double Area)> Of(PlatformPlan plan, PlatformSection section)
    {
        var zones = WallProfiles.Of(plan).Zones;
        foreach (var wall in section.Faced.Where(w => w.Zone.IsFoot && w.Finish != WallFinish.Plain))
        {
            yield return (FacingRelief.PaintOf(wall.Finish), Step(zones, wall.Zone) * AtHead(wall.Wall.Top, wall.Zone.High));
        }

        foreach (var zone in zones.Where(z => z.IsFoot))
        {
            yield return (FacingRelief.PaintOf(WallFinish.Plain), Step(zones, zone) * Plain(plan, section, zone.High));
        }
    }

    // How far a part stands before the one over it, mm.
    private static double Step(IReadOnlyList<WallZone> zones, in WallZone zone) => zone.Out - zones[zone.Number].Out;

    // Length of an upper edge where it is as high as its part, mm.
    private static double AtHead(IReadOnlyList<Point2> edge, double head) =>
        edge.Zip(edge.Skip(1)).Where(e => e.First.Y > head - Same && e.Second.Y > head - Same).Sum(e => e.Second.X - e.First.X);

    // Length of walls without a finish, along the track, whose deck lies over a height, mm; ends are as long as the platform is wide.
    private static double Plain(PlatformPlan plan, PlatformSection section, double head)
    {
        var (facing, spec) = (plan.Spec.Facing!, plan.Spec);
        int fronts = facing.Front != WallFinish.Plain ? 0 : spec.IsIsland ? 2 : 1;
        int walls = fronts + (facing.Back == WallFinish.Plain && !spec.IsIsland && spec.Back.ShowsWall ? 1 : 0);
        bool Stands(double s) => plan.TopAt(s, plan.WallFace.At(s)) - spec.Deck.Thickness > head;
        double[] stations = [section.From, .. plan.Stations.Where(s => s > section.From && s < section.To), section.To];
        double length = walls == 0 ? 0 : walls * stations.Zip(stations.Skip(1)).Where(p => Stands(p.First) && Stands(p.Second)).Sum(p => p.Second - p.First);
        var ends = new[] { plan.Stations[0], plan.Stations[^1] }.Where(s => s >= section.From && s <= section.To && Stands(s));
        return length + (facing.Ends == WallFinish.Plain ? ends.Sum(plan.Body.WidthAt) : 0);
    }
}
