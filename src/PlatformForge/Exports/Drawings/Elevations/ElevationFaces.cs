using PlatformForge.Exports.Drawings.Elevations.Walls;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Platforms.Surfaces;
using PlatformForge.Sections.Forms;
using PlatformForge.Sections.Rules;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies.Copings;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Solids.Bodies.Walls;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings.Elevations;

/// <summary>The faces of a platform that elevations show: all walls, backs that are none, the face of a retaining wall, and both ends.</summary>
internal static class ElevationFaces
{
    /// <summary>Whether there is anything to draw: not of a platform that stands on bents alone.</summary>
    public static bool Any(PlatformPlan plan) => WallNames.Standing(plan).Any() || (!plan.Spec.IsIsland && plan.Spec.Back.Kind != BackKind.Wall);

    /// <summary>All faces from the front on, round the platform.</summary>
    public static IEnumerable<ElevationFace> Of(PlatformDossier platform) => Of(platform.Sections);

    /// <inheritdoc cref="Of(PlatformDossier)"/>
    internal static IEnumerable<ElevationFace> Of(SectionSet set) => Of(set, s => [.. s.Faced, .. PlainWalls.Of(set, s)], true);

    /// <summary>The walls among them that something is laid on.</summary>
    public static IEnumerable<ElevationFace> Faced(PlatformDossier platform) => Of(platform.Sections, s => s.Faced, false);

    private static IEnumerable<ElevationFace> Of(SectionSet set, Func<PlatformSection, IReadOnlyList<FacedWall>> walls, bool plain)
    {
        var plan = set.Plan;
        bool rising = plan.Side == Track.Side.Left;
        var laid = set.Sections.Select(s => (s.Number, Walls: plain ? FittingGaps.Closed(plan, walls(s), s.From, s.To) : walls(s))).ToArray();
        foreach (string name in WallNames.AllRound(plan))
        {
            // A face with a coping is seen from its track, the far one from the other side.
            bool isFar = name != WallNames.FrontOf(1), toTheRight = rising != isFar;
            var slices = WallSlice.Of(toTheRight ? laid : laid.Reverse(), name);
            var standing = plain && name is not (WallNames.AtStart or WallNames.AtEnd) ? StandingMarks.Of(set, toTheRight, isFar) : [];
            if (slices.Count > 0)
            {
                yield return Wall(set, name, slices) with { Standing = standing };
            }

            if (name == WallNames.Back && plan.Spec.Back.Kind != BackKind.Wall)
            {
                yield return new(name, [], 0, Paint.Deck)
                {
                    Back = new(set),
                    Standing = standing,
                    Words = plan.Bank is { } bank ? Invariant($"bank of 1 in {Figures.Short(bank.Slope)}") : "open, as from the backscene",
                };
            }

            if (name == WallNames.FrontOf(1) && Retaining(set, rising, plain) is { Slices.Count: > 0 } wall)
            {
                yield return wall;
            }
        }
    }

    private static ElevationFace Wall(SectionSet set, string name, IReadOnlyList<WallSlice> slices)
    {
        var plan = set.Plan;
        double deck = plan.Spec.Deck.Thickness;
        var profile = WallProfiles.Of(plan);
        var face = new ElevationFace(name, slices, deck, Paint.Deck)
        {
            PlinthHead = plan.Spec.Facing?.Plinth is null ? null
                : profile.Zones.Zip(profile.Zones.Skip(1)).LastOrDefault(z => z.First.Out - z.Second.Out > ElevationRow.Shadow).First is { Number: > 0 } head
                    ? head.High : null,
            Fitted = plan.Fittings,
        };
        face = name is WallNames.AtStart or WallNames.AtEnd ? face : face with { Fittings = FittingSight.Of(plan, name != WallNames.FrontOf(1)) };
        if (name is WallNames.AtStart or WallNames.AtEnd)
        {
            return face with { Slab = 0, Shapes = [.. EndShapes.Of(plan, name == WallNames.AtStart ? plan.Stations[0] : plan.Stations[^1])] };
        }

        return name == WallNames.Back ? face with { Over = [.. Standing(plan)] }
            : face with
            {
                Slab = Math.Max(deck, plan.Spec.Coping.Thickness),
                Paint = CopingGrooves.PaintOf(plan),
                RailTop = plan.Site.RailTop,
                DeckEdge = Math.Max(0, deck - plan.Spec.Coping.Thickness),
                Joints = [.. Joints(plan, plan.Faces[name == WallNames.FrontOf(1) ? 0 : 1])],
            };
    }

    // Where the joints of a face's coping are seen on its front.
    private static IEnumerable<Point2> Joints(PlatformPlan plan, FacePlan face) =>
        CopingFronts.Of(face, plan.Spec.Coping).Select(s => face.ToLayout(s, face.CopingFront.At(s)));

    /// <summary>The face of a retaining wall over the deck: its pieces, coping and plinth; without slices where there is none.</summary>
    /// <param name="set">The sections.</param>
    /// <param name="rising">Whether chainage grows to the right.</param>
    /// <param name="plain">Whether it is shown where nothing is laid on it.</param>
    internal static ElevationFace Retaining(SectionSet set, bool rising, bool plain = true)
    {
        LinePiece[] pieces = [.. set.Lines.Pieces.Where(p => p.Made.Wall is not null)];
        WallSlice[] slices = [.. (rising ? pieces : pieces.Reverse()).SelectMany(p => (p.Faced.Count > 0 || !plain ? p.Faced : PlainWalls.Of(set, p))
            .Select(w => new WallSlice(w, p.Section, 0, w.Wall.Length, true)))];
        var made = pieces.FirstOrDefault()?.Made.Wall;
        double foot = slices.SelectMany(s => s.Wall.Wall.Foot).Select(p => p.Y).DefaultIfEmpty(0).Min();
        return new(WallNames.Retaining, slices, made?.Coping ?? 0, Paint.Coping)
        {
            Base = foot - (made?.Plinth ?? 0),
            Plinth = made?.Plinth ?? 0,
            Words = "over the deck",
        };
    }

    // What stands on the deck along the back, as it is seen from behind.
    private static IEnumerable<StandingBand> Standing(PlatformPlan plan)
    {
        // The ends of a coping that turns the corner, which lie in the deck's edge there.
        foreach (var turn in plan.Spec.IsIsland ? [] : CopingReturn.Of(plan))
        {
            Point2 first = plan.ToLayout(turn.From, plan.Back.At(turn.From)), last = plan.ToLayout(turn.To, plan.Back.At(turn.To));
            yield return new(first, last, -plan.Spec.Coping.Thickness, 0, Palette.Of(CopingGrooves.PaintOf(plan)));
        }

        foreach (var line in plan.Body.Lines.Where(l => l.Made.Name is LineMake.Retaining or LineMake.Kerb))
        {
            Point2 from = plan.ToLayout(line.From, line.Far.At(line.From)), to = plan.ToLayout(line.To, line.Far.At(line.To));
            double coping = line.Made.Wall?.Coping ?? 0;
            double? level = line.Made.Wall?.LevelTop;
            yield return new(from, to, 0, line.Made.Rise - coping, LineLooks.Of(line.Made, plan.Spec)) { HighAt = level - coping };
            if (coping > 0)
            {
                yield return new(from, to, line.Made.Rise - coping, line.Made.Rise, Palette.Of(Paint.Coping)) { LowAt = level - coping, HighAt = level };
            }
        }
    }
}
