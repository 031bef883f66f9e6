using PlatformForge.Platforms.Features;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Furniture;

/// <summary>Where ribs stand, and how far apart those across are.</summary>
internal sealed record PlannedRibs(IReadOnlyList<PlanRib> Ribs, RibPitch Pitch)
{
    /// <summary>How far apart bents are; nothing where there are none.</summary>
    public RibPitch Bents { get; init; } = new(0, 0, 0, 0, 0, 0);
}

/// <summary>
/// Sets end walls and ribs. Every stretch between the platform's ends and its cuts, which all have walls, is divided evenly by ribs across, as few as
/// the pitch allows; they step aside from holes, and from sockets where that keeps the pitch, else they stand under them. Distances are true ones where
/// the platform is longest, at its front wall or its back. Ribs along step aside square to the track.
/// </summary>
internal sealed class RibPlanner(
    PlatformSpec spec, BodyPlan lines, Spine chart, IReadOnlyList<double> cuts, List<Finding> findings, TrestleStretch? trestle = null)
{
    // What a rib makes room for when it is not furniture.
    private const string Neighbour = "another rib or wall";

    // A rib less than this off an even division, mm, did not step aside.
    private const double Aside = 0.05;

    // Between a cut or an end, where a wall stands, and a rib's face, mm: nearer, wall and rib are built twice.
    private const double OffWalls = 5;

    // Kept beside furniture on top of half a rib, mm: far more than rounding.
    private const double Hair = 0.002;

    // Sums of lengths that differ by less than this, mm, are equal.
    private const double Grain = Tolerances.SameLength;

    private readonly FaceSpec face = spec.Face;
    private readonly RibRow ribRow = RibRow.Ribs(spec.Ribs);
    private readonly RibRow? bentRow = trestle is null || spec.Trestle is not { } bents ? null : RibRow.Bents(bents);
    private readonly FacetStretch facets = new(chart, lines.WallFace, lines.Back);
    private readonly List<(double By, string What)> moves = [];

    public PlannedRibs Plan(IReadOnlyList<Keepout> keepouts)
    {
        var ribs = new List<PlanRib> { EndWall(face.From, true), EndWall(face.To, false) };
        ribs.AddRange(HeadWalls());
        var (pitch, apart) = Across(keepouts, ribs);
        ribs.AddRange((lines.Across is not null ? Between(keepouts) : Lengthwise(keepouts)).SelectMany(OffTrestle));
        ribs.AddRange(Bearers());
        if (moves.Count > 0)
        {
            findings.Add(PlatformFindings.RibsMoved($"{spec.Key}.ribs", moves.Count, moves.Max(m => m.By), moves.Select(m => m.What).Distinct()));
        }

        return new(ribs, pitch) { Bents = apart };
    }

    // The wall that closes an end, or the bent that stands there.
    private PlanRib EndWall(double end, bool isStart)
    {
        bool isBent = bentRow is not null && end == (isStart ? trestle!.From : trestle!.To);
        var (thick, depth) = isBent ? (bentRow!.Thickness, bentRow.Depth) : (spec.EndDepthAt(!isStart), null);
        double along = Along(end, thick);
        return new(RibKind.EndWall, isStart ? end : end - along, isStart ? end + along : end, lines.WallBack, lines.BackWallFace, depth);
    }

    // Walls that close hollow ramps where bents begin.
    private IEnumerable<PlanRib> HeadWalls()
    {
        if (bentRow is null || spec.Trestle!.Ramps != TrestleRamps.Walls)
        {
            yield break;
        }

        double start = trestle!.From, end = trestle.To, thick = spec.Walls.EndThickness;
        if (start > face.From)
        {
            yield return new(RibKind.Transverse, start - Along(start, thick), start, lines.WallBack, lines.BackWallFace, null);
        }

        if (end < face.To)
        {
            yield return new(RibKind.Transverse, end, end + Along(end, thick), lines.WallBack, lines.BackWallFace, null);
        }
    }

    // A rib along the platform, but for where bents stand.
    private IEnumerable<PlanRib> OffTrestle(PlanRib rib) => bentRow is null ? [rib]
        : new[] { rib with { To = Math.Min(rib.To, trestle!.From) }, rib with { From = Math.Max(rib.From, trestle.To) } }.Where(r => r.To > r.From);

    // Over each row of posts that is not under the edges of the deck.
    private IEnumerable<PlanRib> Bearers() => bentRow is null ? [] : PostRow.Of(spec.Trestle!, lines).Skip(1).SkipLast(1)
        .Select(r => new PlanRib(RibKind.Longitudinal, trestle!.From, trestle.To, r.Near, r.Far, spec.Trestle!.Bearer));

    private (RibPitch Ribs, RibPitch Bents) Across(IReadOnlyList<Keepout> keepouts, List<PlanRib> ribs)
    {
        double[] walls = [face.From, .. Dividers().Where(c => c > face.From && c < face.To).Order(), face.To];
        var found = new RibPitch(spec.Ribs.Pitch, 0, 0, 0, face.From, face.From);
        var apart = new RibPitch(bentRow?.Pitch ?? 0, 0, 0, 0, face.From, face.From);
        var length = new LineLength(face.From, face.To, Longest);
        for (int i = 0; i + 1 < walls.Length; i++)
        {
            bool isBents = bentRow is not null && trestle!.Holds((walls[i] + walls[i + 1]) / 2);
            var row = isBents ? bentRow! : ribRow;
            if (row.Pitch > 0)
            {
                double[] middles = Divide(row, length, walls[i], walls[i + 1], keepouts);
                ribs.AddRange(middles.Select(s => (At: s, Half: Along(s, row.Thickness) / 2))
                    .Select(r => new PlanRib(RibKind.Transverse, r.At - r.Half, r.At + r.Half, lines.WallBack, lines.BackWallFace, row.Depth)));
                (found, apart) = isBents ? (found, Measured(apart, middles)) : (Measured(found, middles), apart);
            }

            RibPitch Measured(RibPitch pitch, double[] middles)
            {
                double[] carried = [walls[i], .. middles, walls[i + 1]];
                pitch = carried.Zip(carried.Skip(1)).Aggregate(pitch, (p, s) => p.With(s.First, s.Second, length.To(s.Second) - length.To(s.First)));
                return pitch with { Count = pitch.Count + middles.Length };
            }
        }

        return (found, apart);
    }

    // Cuts, and where bents begin and end.
    private IEnumerable<double> Dividers() => bentRow is null ? cuts
        : cuts.Concat(new[] { trestle!.From, trestle.To }.Where(d => cuts.All(c => Math.Abs(c - d) > Grain)));

    // Middles of the ribs between two walls.
    private double[] Divide(RibRow ribs, LineLength length, double from, double to, IReadOnlyList<Keepout> keepouts)
    {
        double a = length.To(from), b = length.To(to), pitch = ribs.Pitch;
        var (row, blocked) = Row(ribs, length, from, to, keepouts);
        double[] ends = [a, .. row, b];
        for (int i = 0; i + 1 < ends.Length; i++)
        {
            if (ends[i + 1] - ends[i] > pitch + Grain)
            {
                var names = blocked.Where(k => k.Low < ends[i + 1] - Grain && k.High > ends[i] + Grain).SelectMany(k => k.Names).Distinct();
                findings.Add(PlatformFindings.NoRibWithin(
                    $"{spec.Key}.{ribs.Key}",
                    length.At(ends[i]),
                    length.At(ends[i + 1]),
                    ends[i + 1] - ends[i],
                    pitch,
                    names));
            }
        }

        for (int i = 0; i < row.Length; i++)
        {
            double even = a + ((b - a) * (i + 1) / (row.Length + 1));
            var beside = blocked.FirstOrDefault(k => Math.Abs(k.Low - row[i]) < Grain || Math.Abs(k.High - row[i]) < Grain);
            if (Math.Abs(row[i] - even) > Aside && beside?.Names is { } names)
            {
                moves.AddRange(names.Select(n => (Math.Abs(row[i] - even), n)));
            }
        }

        return Array.ConvertAll(row, length.At);
    }

    // Ribs keep off walls, unless one beside a wall keeps a stretch within the pitch.
    private (double[] Row, List<BlockedRange> Blocked) Row(RibRow ribs, LineLength length, double from, double to, IReadOnlyList<Keepout> keepouts)
    {
        double thick = Along((from + to) / 2, ribs.Thickness), least = 2 * thick;
        double wanted = Math.Max(least, Math.Max(Along(from, OffWalls), Along(to, OffWalls)) + (thick / 2));
        var (off, near) = (Kept(wanted), Kept(least));
        return Beyond(near.Row) < Beyond(off.Row) ? near : off;

        (double[] Row, List<BlockedRange> Blocked) Kept(double room)
        {
            var blocked = Blocked(ribs, length, from, to, room, keepouts);
            double a = length.To(from), b = length.To(to);
            return (EvenRow.Divide(a, b, ribs.Pitch, Free(a, b, blocked)), blocked);
        }

        int Beyond(double[] row)
        {
            double[] ends = [length.To(from), .. row, length.To(to)];
            return ends.Zip(ends.Skip(1), (low, high) => high - low).Count(gap => gap > ribs.Pitch + Grain);
        }
    }

    private static List<(double Low, double High)> Free(double a, double b, List<BlockedRange> blocked)
    {
        var free = new List<(double, double)>();
        double at = a;
        foreach (var (low, high, _) in blocked.Append(new(b, b, [])))
        {
            if (low >= at)
            {
                free.Add((at, low));
            }

            at = Math.Max(at, high);
        }

        return free;
    }

    // A stretch where no rib's middle may stand, in lengths, and whose doing it is.
    private sealed record BlockedRange(double Low, double High, string[] Names);

    // Places that run into one another.
    private sealed record Taken(double Low, double High, List<Keepout> All);

    // Stretches where no rib's middle may stand, in lengths, merged and in order. Sockets that leave no place within a pitch are stood under.
    private List<BlockedRange> Blocked(RibRow ribs, LineLength length, double from, double to, double room, IReadOnlyList<Keepout> keepouts)
    {
        var taken = keepouts.Where(k => k.Holds(KeptOff.RibsAcross) && k.To > from && k.From < to).ToArray();
        var merged = Merged(taken);
        var narrow = merged.SelectMany(m => m.High - m.Low > ribs.Pitch ? m.All.Where(k => !k.IsFloored) : m.All);
        double start = length.To(from), end = length.To(to);

        // Beside a wall there is no place for a rib either.
        return
        [
            new(start, length.To(Math.Min(to, from + room)), [Neighbour]),
            .. Merged([.. narrow]).Select(m => new BlockedRange(Math.Max(start, m.Low), Math.Min(end, m.High), [.. m.All.Select(k => k.Name).Distinct()])),
            new(length.To(Math.Max(from, to - room)), end, [Neighbour]),
        ];

        List<Taken> Merged(IReadOnlyList<Keepout> places)
        {
            var rows = new List<Taken>();
            foreach (var k in places.OrderBy(k => k.From))
            {
                double half = Beside(k, ribs.Thickness), low = length.To(k.From - half), high = length.To(k.To + half);
                if (rows.Count > 0 && low < rows[^1].High)
                {
                    rows[^1].All.Add(k);
                    rows[^1] = rows[^1] with { High = Math.Max(rows[^1].High, high) };
                }
                else
                {
                    rows.Add(new(low, high, [k]));
                }
            }

            return rows;
        }
    }

    // What a rib along steps aside for, square to it.
    private sealed record Obstacle(double Low, double High, string Name);

    private IEnumerable<PlanRib> Lengthwise(IReadOnlyList<Keepout> keepouts)
    {
        double inner = spec.Deck.Width - spec.Coping.Overhang - spec.FrontDepth - spec.BackDepth;
        double half = spec.Ribs.LongitudinalThickness / 2;
        double from = face.From + Along(face.From, spec.EndDepthAt(false)), to = face.To - Along(face.To, spec.EndDepthAt(true));

        // Places are told from the inner face of the front wall, which all lines are parallel to.
        var taken = keepouts.Where(k => k.Holds(KeptOff.RibsAlong))
            .Select(k => new Obstacle(k.Near - WallBack(k, Math.Max), k.Far - WallBack(k, Math.Min), k.Name)).ToList();
        double below = 0;
        for (int i = 1; i <= spec.Ribs.LongitudinalCount; i++)
        {
            double wanted = inner * i / (spec.Ribs.LongitudinalCount + 1);
            bool Clear(double u) => u - half >= below && u + half <= inner && taken.All(k => u + half <= k.Low || u - half >= k.High);
            double[] places = [.. taken.SelectMany(k => new[] { k.Low - half, k.High + half }).Prepend(wanted).Where(Clear)];
            if (places.Length == 0)
            {
                findings.Add(PlatformFindings.RibLeftOut($"{spec.Key}.ribs.lengthwise", i, spec.Ribs.LongitudinalCount));
                continue;
            }

            double free = places.MinBy(u => Math.Abs(u - wanted));
            if (free != wanted)
            {
                string? what = taken.Find(k => wanted + half > k.Low && wanted - half < k.High)?.Name;
                moves.Add((Math.Abs(free - wanted), what ?? Neighbour));
            }

            below = free + half;
            yield return new(RibKind.Longitudinal, from, to, lines.WallBack.Shifted(free - half), lines.WallBack.Shifted(free + half), spec.Ribs.Depth);
        }
    }

    // Between two faces ribs along share the width everywhere: one alone runs along the middle. They step aside square to the lines they would be on.
    private IEnumerable<PlanRib> Between(IReadOnlyList<Keepout> keepouts)
    {
        double half = spec.Ribs.LongitudinalThickness / 2;
        double from = face.From + Along(face.From, spec.EndDepthAt(false)), to = face.To - Along(face.To, spec.EndDepthAt(true));
        Keepout[] taken = [.. keepouts.Where(k => k.Holds(KeptOff.RibsAlong))];
        PlanLine beside = lines.WallBack;
        for (int i = 1; i <= spec.Ribs.LongitudinalCount; i++)
        {
            double share = i / (spec.Ribs.LongitudinalCount + 1.0);
            var wanted = lines.WallBack with { Reach = [.. lines.WallBack.Reach.Zip(lines.BackWallFace.Reach, (a, b) => a + (share * (b - a)))] };
            double least = beside.Reach.Zip(wanted.Reach, (a, b) => a - b).Max() + half,
                most = lines.BackWallFace.Reach.Zip(wanted.Reach, (a, b) => a - b).Min() - half;
            Obstacle[] off = [.. taken.Select(k => new Obstacle(k.Near - Over(wanted, k, Math.Max) - half, k.Far - Over(wanted, k, Math.Min) + half, k.Name))];
            bool Clear(double by) => by >= least && by <= most && off.All(k => by <= k.Low || by >= k.High);
            double[] places = [.. off.SelectMany(k => new[] { k.Low, k.High }).Prepend(0).Where(Clear)];
            if (places.Length == 0)
            {
                findings.Add(PlatformFindings.RibLeftOut($"{spec.Key}.ribs.lengthwise", i, spec.Ribs.LongitudinalCount));
                continue;
            }

            double by = places.MinBy(Math.Abs);
            if (by != 0)
            {
                moves.Add((Math.Abs(by), Array.Find(off, k => k.Low < 0 && k.High > 0)?.Name ?? Neighbour));
            }

            beside = wanted.Shifted(by + half);
            yield return new(RibKind.Longitudinal, from, to, wanted.Shifted(by - half), beside, spec.Ribs.Depth);
        }
    }

    // The wall bends at stations within the place as well as it may slope over it.
    private double WallBack(Keepout k, Func<double, double, double> choose) => Over(lines.WallBack, k, choose);

    private double Over(PlanLine line, Keepout k, Func<double, double, double> choose) =>
        lines.Stations.Where(s => s > k.From && s < k.To).Append(k.To).Select(line.At).Aggregate(line.At(k.From), choose);

    // Length in the layout between two near chainages at the wall or the back, whichever is longer.
    private double Longest(double a, double b)
    {
        if (chart.Across is not null)
        {
            double Between(PlanLine line) => (chart.ToLayout(b, line.At(b)) - chart.ToLayout(a, line.At(a))).Length;
            return Math.Max(Between(lines.WallFace), Between(lines.FarWallFace));
        }

        double middle = (a + b) / 2;
        return (b - a) * Math.Max(chart.Stretch(middle, lines.WallFace.At(middle)), chart.Stretch(middle, lines.Back.At(middle)));
    }

    // Chainage from a piece of furniture to the middle of the nearest rib, whose half is largest where the track bends most.
    private double Beside(Keepout k, double t)
    {
        return (new[] { k.From - t, k.From, k.To, k.To + t }.Max(s => Along(s, t)) / 2) + Hair;
    }

    // Chainage that gives a thickness at least this in the layout from front wall to back wall, whichever way it is laid from a place.
    private double Along(double s, double thickness) => thickness / facets.Least(s - thickness, s + thickness);
}
