using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Sweeping;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Track;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings.Sections;

/// <summary>What a cross-section shows, in its own coordinates: reach t to the platform's side, height z over the baseboard, mm.</summary>
internal sealed class CrossSection
{
    private static readonly double[] Enlargements = [20, 15, 12, 10, 8, 7.5, 6, 5, 4, 3.5, 3, 2.5, 2, 1.5, 1.25, 1, 0.8, 0.75, 0.6, 0.5, 0.4, 0.3, 0.25, 0.2,
        0.1, 0.05];

    // mm of paper: widths of the column on the right and of the one on the left, and what the enlarged edge and words over the deck take.
    private const double Column = 150, LeftColumn = 88, LeastDetail = 80, DetailDepth = 84, AboveDeck = 14;

    // A track nearer to the faced one than this, mm, is the same rails still; tracks farther off than these, mm at full size, are not in the picture.
    private const double Own = 0.5, Before = 5500, Behind = 3700;

    private readonly Dossier dossier;
    private readonly PlatformDossier platform;
    private readonly PlatformPlan plan;
    private readonly double s;
    private readonly double front;
    private readonly double wall;
    private readonly double back;
    private readonly double top;
    private readonly IReadOnlyList<(PartReach Part, double Near, double Far, int Vehicle)> parts;
    private readonly (double T0, double T1, double Z0, double Z1)[] standing;
    private readonly IReadOnlyList<TrackCrossing> others;
    private double scale;
    private Point2 origin;

    public CrossSection(Dossier dossier, PlatformDossier platform, double chainage)
    {
        (this.dossier, this.platform, plan, s) = (dossier, platform, platform.Plan, chainage);
        (front, wall, back, top) = (plan.CopingFront.At(s), plan.SquareReach(plan.WallFace, s), plan.SquareReach(plan.Back, s), plan.Profile.At(s));
        int station = Math.Clamp((int)Math.Round((s - platform.Envelope.From) / platform.Envelope.Spacing), 0, platform.Envelope.Count - 1);
        int at = Math.Clamp(Array.BinarySearch(plan.Requirement.Stations, s) is var f && f >= 0 ? f : ~f, 0, plan.Requirement.Stations.Length - 1);
        Governing = plan.Requirement.GoverningVehicle[at];

        // Of other tracks only the vehicle that governs: the rest do not decide anything here.
        parts = [.. platform.Envelope.Parts
            .Select(p => (p, Near: p.Towards(plan.Side)[station], Far: p.Towards(plan.Side.Opposite())[station], Vehicle: ToldAs(p)))
            .Where(p => double.IsFinite(p.Near) && double.IsFinite(p.Far) && (p.p.IsFaced || p.Vehicle == Governing))];
        standing = Standing(plan.Requirement.GoverningPart[at]);
        others = [.. dossier.Tracks.Where(t => t.Ride.Name != plan.Spec.Face.Track).Select(t => TrackCrossing.At(t.Ride, plan,
            s)).OfType<TrackCrossing>().Where(c => (Math.Abs(c.Reach) > Own || c.Name == plan.Requirement.OtherTrack(Governing))
            && c.Reach > -dossier.Scale.ToModel(Before) && c.Reach < back + dossier.Scale.ToModel(Behind))];
        Spare = front - plan.Requirement.Swept[at];
    }

    /// <summary>Index of the vehicle that reaches farthest here.</summary>
    public int Governing { get; }

    /// <summary>From the farthest reach to the coping, mm.</summary>
    public double Spare { get; }

    /// <summary>How the scale is said.</summary>
    public string Scale => scale >= 1 ? Invariant($"{Figures.Short(scale)}:1") : Invariant($"1:{Figures.Short(1 / scale)}");

    public void DrawOn(Sheet sheet, double upper, double lower)
    {
        double left = Math.Max(parts.Select(p => p.Far).DefaultIfEmpty(dossier.Gauge).Max(),
            others.Select(o => dossier.Gauge - o.Reach).DefaultIfEmpty(0).Max()) + 4, high = Math.Max(top, parts.Select(p => p.Part.ZHigh
            + plan.Site.RailTop).DefaultIfEmpty(0).Max());
        var vehicles = Vehicles();

        // The legend stands on the right under the enlarged edge, over the deck. Where there is no room it has a column on the left.
        Place(sheet, 0, left, high, upper, lower);
        double right = sheet.Width - TitleBlock.Inset, free = right - (origin.X + (front * scale)) - 8, width = Math.Min(free, Column),
            under = TitleBlock.Margin + 24 + DetailDepth + 6;
        bool detail = free > LeastDetail, onRight = detail && under + vehicles.LegendDepth(width) < Of(0, top + Rise).Y - AboveDeck;
        if (!onRight)
        {
            Place(sheet, LeftColumn, left, high, upper, lower);
            free = right - (origin.X + (front * scale)) - 8;
            (width, detail) = (Math.Min(free, Column), free > LeastDetail);
        }

        foreach (var track in others)
        {
            track.DrawOn(sheet, Of, dossier, Math.Abs(track.Reach - 0) < back ? high + (6 / scale) : plan.Site.RailTop + (10 / scale));
        }

        Wheels(sheet);
        vehicles.DrawOn(sheet, Of);
        vehicles.Legend(sheet, onRight ? new(right - width, under) : new(TitleBlock.Inset, TitleBlock.Margin + 21), onRight ? width : LeftColumn - 4);
        Track(sheet);
        Body(sheet);
        sheet.Line(Of(-left, 0), Of(Farthest + 4, 0), HouseStyle.Heavy);
        sheet.Text("baseboard", Of(-left, 0) + new Point2(0, 3.4), HouseStyle.Small);
        sheet.Line(Of(0, -2 / scale), Of(0, high + (6 / scale)), HouseStyle.Centre);
        Measures(sheet, left);
        if (detail)
        {
            Detail(sheet, right - width, width);
        }
    }

    // The edge enlarged.
    private void Detail(Sheet sheet, double left, double width)
    {
        var bodies = parts.Where(p => p.Vehicle == Governing)
            .Select(p => (-p.Far, p.Near, plan.Site.RailTop + p.Part.ZLow, plan.Site.RailTop + p.Part.ZHigh)).ToArray();
        var detail = new EdgeDetail(SectionRing.Of(plan, s), bodies, new VehicleLooks(platform)[Governing])
        {
            Lines = by => LineSection.At(plan, s, 0.5 / by),
            WallBehind = plan.Trestle?.Stretch.Holds(s) == true ? 0 : Math.Max(0, plan.SquareReach(plan.WallAt(false, s), s) - wall),
            Before = plan.Fittings.FirstOrDefault(r => r.IsBefore)?.Plural,
        };
        detail.DrawOn(sheet, new(left, TitleBlock.Margin + 24), new(width, DetailDepth), front, top, Spare, plan.Spec);
    }

    // A truck is told with its engine, unless it is what governs.
    private int ToldAs(PartReach part)
    {
        int own = plan.Requirement.IndexOf(part);
        return part.Vehicle.TruckOf is { } engine && own != Governing && plan.Requirement.IndexOf(engine, part.OtherTrack) is var at and >= 0 ? at : own;
    }

    // The largest scale at which the section has room beside a column on the left, and where its origin lies then.
    private void Place(Sheet sheet, double column, double left, double high, double upper, double lower)
    {
        double room = sheet.Width - (2 * TitleBlock.Inset) - column;
        scale = Array.Find(Enlargements, e => (left + Farthest + 4) * e <= room - 50 && high * e <= lower - upper);
        scale = scale > 0 ? scale : 0.05;
        origin = new(TitleBlock.Inset + column + ((room - ((left + Farthest + 4) * scale)) / 2) + (left * scale), lower);
    }

    /// <summary>What the governing vehicle's parts cover of the section, standing where it reaches farthest; empty where none governs.</summary>
    private (double T0, double T1, double Z0, double Z1)[] Standing(string part)
    {
        var reach = platform.Envelope.Parts.FirstOrDefault(p => plan.Requirement.IndexOf(p) == Governing && p.Part.Name == part);
        var run = Governing < 0 ? null : dossier.Tracks.FirstOrDefault(t => t.Ride.Name == plan.TrackOf(Governing));
        if (reach is null || run is null || PoseFinder.Farthest(run, plan.Chart, reach.Vehicle, reach.Part, plan.Side, s) is not { } pose)
        {
            return [];
        }

        var frame = plan.Chart.At(s);
        double rails = dossier.RailTopOf(run.Ride.Name);
        var cut = new List<(double, double, double, double)>();
        foreach (var placed in pose.Parts)
        {
            double[] offsets = [.. Enumerable.Range(0, placed.Ring.Count)
                .Select(i => StationCut.Offset(placed.Ring[i] - frame.Position, placed.Ring[(i + 1) % placed.Ring.Count] - frame.Position, frame))
                .OfType<double>().Select(d => plan.Side.Reach(d))];
            if (offsets.Length > 1)
            {
                cut.Add((offsets.Min(), offsets.Max(), rails + placed.Part.ZLow, rails + placed.Part.ZHigh));
            }
        }

        return [.. cut];
    }

    // How far what is laid or stood into the deck here rises over it.
    private double Rise => plan.Body.Lines.Where(l => s >= l.From && s <= l.To).Select(l => l.RiseOver(plan.TopAt(s, l.Near.At(s)))).DefaultIfEmpty(0).Max();

    // The farthest thing to the right: the platform's back, or a track behind it.
    private double Farthest => others.Select(o => o.Reach + dossier.Gauge).Append(plan.Outer.At(s)).Max();

    // The wheels under the governing vehicle, so that it does not float: tyre and flange on either rail, the axle between them. Sizes at full size from
    // memory, for
    // looks only.
    private void Wheels(Sheet sheet)
    {
        if (Governing < 0 || standing.Length == 0)
        {
            return;
        }

        double middle = others.FirstOrDefault(o => o.Name == plan.Requirement.OtherTrack(Governing))?.Reach ?? 0;

        double ratio = dossier.Scale.Ratio, high = 920 / ratio, tyre = 130 / ratio, flange = 28 / ratio, axle = 150 / ratio, rail = plan.Site.RailTop,
            inner = (dossier.Gauge / 2) - (30 / ratio);
        Fill steel = new(HouseStyle.Hair);
        Box(sheet, middle - inner, middle + inner, rail + ((high - axle) / 2), rail + ((high + axle) / 2), steel, HouseStyle.Thin);
        foreach (int side in (int[])[-1, 1])
        {
            Box(sheet, middle + Math.Min(side * inner, side * (inner + tyre)), middle + Math.Max(side * inner, side * (inner + tyre)), rail, rail + high,
                steel, HouseStyle.Thin);
            Box(sheet, middle + Math.Min(side * inner, side * (inner - flange)), middle + Math.Max(side * inner, side * (inner - flange)), rail - flange,
                rail + high + flange, steel, HouseStyle.Thin);
        }
    }

    private Point2 Of(double t, double z) => new(origin.X + (t * scale), origin.Y - (z * scale));

    private void Box(Sheet sheet, double t0, double t1, double z0, double z1, Fill? fill, Pen? pen) =>
        sheet.Area([Of(t0, z0), Of(t1, z0), Of(t1, z1), Of(t0, z1)], fill, pen);

    private SectionVehicles Vehicles() => new(
        [.. parts.GroupBy(p => p.Vehicle).OrderBy(g => g.Key).Select(g => (g.Key, (IReadOnlyList<(double, double, double, double)>)[.. g.Select(p => (-p.Far,
            p.Near, plan.Site.RailTop + p.Part.ZLow, plan.Site.RailTop + p.Part.ZHigh))]))],
        standing,
        Governing,
        [.. Enumerable.Range(0, plan.Requirement.Vehicles.Count).Select(plan.Requirement.Called)],
        new(platform));

    private void Track(Sheet sheet)
    {
        double ratio = dossier.Scale.Ratio, half = 2590 / ratio / 2, rail = 145 / ratio, head = 70 / ratio, foot = Math.Max(plan.Site.RailTop - rail,
            plan.Site.RailTop / 2), bed = foot * 0.8;
        sheet.Area([Of(-half - (1.2 * bed), 0), Of(-half, bed), Of(half, bed), Of(half + Math.Min(1.2 * bed, Math.Max(0, wall - half - 0.2)), 0)],
            new(HouseStyle.Deck), HouseStyle.Fine);
        Box(sheet, -half, half, bed, foot, new(HouseStyle.Hair), HouseStyle.Thin);
        foreach (int side in (int[])[-1, 1])
        {
            double inner = side * dossier.Gauge / 2, outer = inner + (side * head);
            Box(sheet, Math.Min(inner, outer), Math.Max(inner, outer), foot, plan.Site.RailTop, new(HouseStyle.Quiet), HouseStyle.Thin);
        }

        sheet.Line(Of(-half, plan.Site.RailTop), Of(wall - 0.3, plan.Site.RailTop), new(0.12, HouseStyle.Quiet, 2, 1));
    }

    private void Body(Sheet sheet)
    {
        var spec = plan.Spec;
        double slab = spec.Deck.Thickness, wallBack = plan.SquareReach(plan.WallBack, s), backWall = plan.SquareReach(plan.BackWallFace, s);
        Point2[] ring = [.. SectionRing.Of(plan, s).Select(p => Of(p.X, p.Y))];
        Bank(sheet, slab, backWall);
        bool isOnBents = plan.Trestle is { Stretch: var bents } && bents.Holds(s);
        foreach (var part in isOnBents ? BentView.Of(plan, s) : [])
        {
            sheet.Area(part.Select(p => Of(p.X, p.Y)), new(HouseStyle.Deck), HouseStyle.Thin);
        }

        if (!isOnBents)
        {
            sheet.Area([Of(wallBack, 0), Of(wallBack, plan.SquareTopAt(s, wallBack) - slab), Of(backWall, plan.SquareTopAt(s, backWall) - slab),
                Of(backWall, 0)], new(HouseStyle.Deck, 0.6), HouseStyle.Hidden);
        }

        sheet.Area(ring, new(HouseStyle.Coping));
        sheet.Area(ring, new(HouseStyle.Quiet, 0.5, Pattern.Rising), HouseStyle.Heavy);
        foreach (var (line, colour) in LineSection.At(plan, s, 0.5 / scale))
        {
            sheet.Area(line.Select(p => Of(p.X, p.Y)), new(colour), HouseStyle.Thin);
        }

        foreach (var rib in plan.Ribs.Where(r => !isOnBents && r.Kind == RibKind.Longitudinal && s >= r.From && s <= r.To))
        {
            double lowest = rib.Depth is { } d ? Math.Max(0, top - slab - d) : 0;
            Box(sheet, plan.SquareReach(rib.Near, s), plan.SquareReach(rib.Far, s), lowest, plan.SquareTopAt(s, plan.SquareReach(rib.Near, s)) - slab,
                new(HouseStyle.Coping), HouseStyle.Thin);
        }
    }

    private void Bank(Sheet sheet, double slab, double backWall)
    {
        if (plan.Bank is { IsApart: true } apart)
        {
            Point2[] wedge = [.. BankRing.Apart(apart, s, plan.SquareTopAt(s, back)).Select(p => Of(p.X, p.Y))];
            sheet.Area(wedge, new(Palette.Of(Solids.Paint.Turf), 0.3));
            sheet.Area(wedge, new(HouseStyle.Quiet, 0.5, Pattern.Rising), HouseStyle.Heavy);
        }
        else if (plan.Bank is { } bank)
        {
            // Webs under a bank, as ribs under the deck.
            sheet.Area([.. BankRing.Of(bank, s, back, plan.SquareTopAt(s, back), slab).Skip(2).Append(new(backWall, 0)).Select(p => Of(p.X, p.Y))],
                new(HouseStyle.Deck, 0.6), HouseStyle.Hidden);
        }
    }

    private void Measures(Sheet sheet, double left)
    {
        double edge = dossier.Gauge / 2, over = top - plan.Site.RailTop;
        string Both(double mm) => Invariant($"{Figures.Fine(mm)} [{Figures.Fixed(dossier.Scale.ToFullSize(mm), 0)}]");

        // The shorter one nearer, so that no extension line runs through words.
        const double Near = 9, Beyond = 18;
        Dimensions.Between(sheet, Of(edge, 0), Of(front, 0), Near, Invariant($"{Both(front - edge)} from the running edge"));
        Dimensions.Between(sheet, Of(0, 0), Of(front, 0), Beyond, Both(front));
        Dimensions.Between(sheet, Of(front, 0), Of(back, 0), Beyond, Both(back - front));
        double foot = plan.Bank?.Foot.At(s) ?? back;
        Dimensions.Between(sheet, Of(back, plan.Site.RailTop), Of(back, top), 12 + Math.Abs(Of(foot, 0).X - Of(back, 0).X), Both(over));
        if (plan.Bank is { } bank && foot - back > 1)
        {
            Dimensions.Between(sheet, Of(back, 0), Of(foot, 0), Near, Invariant($"{Both(foot - back)}, 1 in {Figures.Short(bank.Slope)}"));
        }

        Dimensions.Between(sheet, Of(-left, 0), Of(-left, plan.Site.RailTop), -6, Figures.Fine(plan.Site.RailTop));
        double reach = front - Spare, level = top + (5 / scale);
        sheet.Line(Of(reach, plan.Site.RailTop), Of(reach, top + (9 / scale)), new(0.12, HouseStyle.Accent, 2, 1));
        sheet.Line(Of(front, top), Of(front, top + (9 / scale)), new(0.12, HouseStyle.Accent, 2, 1));
        Dimensions.Between(sheet, Of(reach, level), Of(front, level), 0, Both(Spare));
    }
}
