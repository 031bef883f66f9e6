using System.Globalization;
using PlatformForge.Exports.Files;
using PlatformForge.Platforms.Plans;
using PlatformForge.Units;

namespace PlatformForge.Exports.Tables;

/// <summary>
/// Where a platform stands, in what a rule can touch: the wall's foot, which stands on the board, the back edge and the coping edge, each from the outer
/// face of
/// the nearer rail; and chords between its cuts and features, so that a curve is stepped off without chainages.
/// </summary>
public static class SettingOut
{
    /// <summary>Distance between rows of the table, mm, where nothing else is said.</summary>
    public const double UsualStep = 10;

    /// <summary>
    /// A row every so many mm of chainage, and at both ends, ramp heads, cuts and features. Distances are square to the track; those from the nearer rail
    /// count from
    /// the outer face of its head. The foot is that of the wall which stands there: between fronts that step out it lies behind theirs.
    /// </summary>
    public static byte[] Table(Dossier dossier, PlatformDossier platform, double step = UsualStep) => Rows(dossier, platform, step).ToBytes();

    /// <summary>Straight distances from each mark to the next; see <see cref="ChordRows"/>.</summary>
    public static byte[] Chords(PlatformDossier platform) => ChordRows(platform).ToBytes();

    internal static CsvText Rows(Dossier dossier, PlatformDossier platform, double step)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(step);
        var (plan, walls) = (platform.Plan, platform.Sections.Plan);
        double outer = (dossier.Gauge / 2) + dossier.RailHead;
        var csv = new CsvText(
            "chainage_mm", "wall_foot_from_rail_outer_face_mm", "back_edge_from_rail_outer_face_mm", "coping_edge_from_rail_outer_face_mm",
            "coping_edge_from_running_edge_mm", "coping_edge_from_track_middle_mm",
            "coping_top_over_rail_mm", "coping_top_over_baseboard_mm", "wall_foot_x_mm", "wall_foot_y_mm", "back_edge_x_mm", "back_edge_y_mm",
            "coping_edge_x_mm", "coping_edge_y_mm", "section", "note");
        foreach (var (s, note) in SetOutMark.Every(platform, step))
        {
            double front = plan.CopingFront.At(s), wall = plan.First.WallFace.At(s) + walls.PanelDepthAt(s), back = plan.SquareReach(plan.Back, s),
                height = plan.TopAt(s, front);
            // Off an island's end the square to one track leaves by the end face: there is no back edge to touch.
            back = IsMet(plan, s, back) ? back : double.NaN;
            var (foot, behind, edge) = (plan.First.ToLayout(s, wall), plan.First.ToLayout(s, back), plan.First.ToLayout(s, front));
            int section = platform.Sections.Sections.FirstOrDefault(p => s >= p.From && s <= p.To)?.Number ?? 0;
            csv.Row(
                N(s), N(wall - outer), N(back - outer), N(front - outer), N(front - (dossier.Gauge / 2)), N(front), N(height - plan.Site.RailTop), N(height),
                N(foot.X), N(foot.Y), N(behind.X), N(behind.Y), N(edge.X), N(edge.Y), section.ToString(CultureInfo.InvariantCulture), note);
        }

        return csv;
    }

    /// <summary>
    /// Straight distances from each mark to the next, along the wall's foot, the coping edge and the back edge, with both diagonals between foot and back:
    /// with a ruler
    /// or compasses each mark follows from the one before it. At every mark the distance straight across, from foot to back.
    /// </summary>
    internal static CsvText ChordRows(PlatformDossier platform)
    {
        var (plan, walls) = (platform.Plan, platform.Sections.Plan);
        double Wall(double s) => plan.WallFace.At(s) + walls.PanelDepthAt(s);
        SetOutMark[] marks = [.. SetOutMark.Of(platform)];
        var csv = new CsvText(
            "from", "to", "from_chainage_mm", "to_chainage_mm", "along_wall_foot_mm", "along_coping_edge_mm", "along_back_edge_mm",
            "foot_to_next_back_mm", "back_to_next_foot_mm", "across_foot_to_back_mm", "next_across_foot_to_back_mm", "from_start_along_wall_foot_mm",
            "from_start_along_back_edge_mm");
        var (foot0, back0) = (plan.ToLayout(marks[0].Chainage, Wall(marks[0].Chainage)), plan.ToLayout(marks[0].Chainage, plan.Back.At(marks[0].Chainage)));
        for (int i = 0; i + 1 < marks.Length; i++)
        {
            double a = marks[i].Chainage, b = marks[i + 1].Chainage;
            var (foot, edge, back) = (plan.ToLayout(a, Wall(a)), plan.ToLayout(a, plan.CopingFront.At(a)), plan.ToLayout(a, plan.Back.At(a)));
            var (foot2, edge2, back2) = (plan.ToLayout(b, Wall(b)), plan.ToLayout(b, plan.CopingFront.At(b)), plan.ToLayout(b, plan.Back.At(b)));
            csv.Row(
                marks[i].Note, marks[i + 1].Note, N(a), N(b), N((foot2 - foot).Length), N((edge2 - edge).Length), N((back2 - back).Length),
                N((back2 - foot).Length), N((foot2 - back).Length), N((back - foot).Length), N((back2 - foot2).Length), N((foot2 - foot0).Length),
                N((back2 - back0).Length));
        }

        return csv;
    }

    // Whether a body is there at a place told square to the first face's track.
    private static bool IsMet(PlatformPlan plan, double chainage, double reach)
    {
        if (plan.Body.Across is null)
        {
            return true;
        }

        double s = plan.Spine.Locate(plan.First.ToLayout(chainage, reach)).Chainage;
        return s >= plan.Profile.From - Tolerances.GridStep && s <= plan.Profile.To + Tolerances.GridStep;
    }

    private static string N(double value) => double.IsFinite(value) ? PlatformForge.Exports.Drawings.Ink.Figures.Fixed(value, 2) : "";
}
