using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Sections.Beds;
using PlatformForge.Sections.Forms;
using PlatformForge.Sections.Plates;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Proofs;

/// <summary>Front door of the room: makes gauges and proofs, and lays them on beds.</summary>
public static class ProofMaker
{
    /// <summary>Greatest play of tongues on each side, as a share of the gauge: more no longer guides.</summary>
    public const double MostPlay = 0.06;

    // Gauges nearer to one another than this, mm, show the same.
    private const double Apart = 30;

    // From a ramp's head to the gauge that stands at the level part's end, mm.
    private const double BesideHead = 10;

    /// <summary>What cannot be whatever the platforms come to; told before anything long is done.</summary>
    /// <param name="spec">What is asked.</param>
    /// <param name="printer">The printer.</param>
    /// <param name="gauge">Between the running edges, mm.</param>
    public static IReadOnlyList<Finding> Objections(ProofSpec spec, PrinterSpec printer, double gauge)
    {
        var findings = new List<Finding>();
        if (spec.Play > gauge * MostPlay)
        {
            findings.Add(ProofFindings.PlayTooLarge(spec, gauge));
        }
        else if (spec.Air < spec.Play + ProofFindings.Beside - Tolerances.Rounding)
        {
            findings.Add(ProofFindings.AirWithinPlay(spec));
        }

        if (spec.Footprint < (2 * printer.Layer) - Tolerances.Rounding)
        {
            findings.Add(ProofFindings.Thin(spec.Key + ".footprint", "A footprint", spec.Footprint, printer.Layer));
        }

        if (spec.Masks < (2 * printer.Layer) - Tolerances.Rounding)
        {
            findings.Add(ProofFindings.Thin(spec.Key + ".masks", "A mask", spec.Masks, printer.Layer));
        }

        return findings;
    }

    /// <summary>All proofs of a design, or every reason why they cannot be made. Solids are raised side by side; the result does not depend on how many cores
    /// there are.</summary>
    public static Outcome<ProofSet> Make(ProofRequest request, CancellationToken cancel = default)
    {
        var findings = Objections(request.Spec, request.Printer, request.Gauge).ToList();
        if (findings.Count > 0)
        {
            return Outcome.Fault<ProofSet>(findings);
        }

        var printer = request.Printer.InTrueSize();
        request = request with { Printer = printer };
        var drafts = Drafts(request, findings).ToArray();
        if (findings.Exists(f => f.Severity == Severity.Error))
        {
            return Outcome.Fault<ProofSet>(findings);
        }

        var raised = new Proof[drafts.Length];
        Parallel.For(0, drafts.Length, new ParallelOptions { CancellationToken = cancel }, i => raised[i] = drafts[i].Raised(printer, cancel));
        var bed = new BedShape(printer);
        List<Proof> proofs = [.. raised.Where(p => IsSound(p, bed, request.Spec.Key, findings))];
        var plates = Plates(proofs, printer);
        var laid = plates.SelectMany(p => p.Proofs).ToDictionary(p => p.Proof.Name, p => p.Proof, StringComparer.Ordinal);
        return Outcome.Of(new ProofSet([.. proofs.Select(p => laid.GetValueOrDefault(p.Name, p))], plates), findings);
    }

    // Whether a proof goes on the bed; what is to be told of one that does is no fault.
    private static bool IsSound(Proof proof, BedShape bed, string key, List<Finding> findings)
    {
        double room = proof.Kind == ProofKind.Strip ? bed.Rooms.Max(r => r.At(proof.Hull, 0)) : bed.Best(proof.Hull).Room;
        if (room < 0)
        {
            findings.Add(ProofFindings.TooLarge(key, proof.Name, proof.Size, -2 * room));
            return false;
        }

        // A slice is what its section is, and its section has told.
        if (proof.Overhangs.Unsupported > LeastTold && proof.Kind != ProofKind.Slice)
        {
            findings.Add(ProofFindings.Hangs(key, proof.Name, proof.Overhangs.Unsupported));
        }

        if (proof.Mark.Length > 0 && !proof.Engraved.Any(line => line.Contains(proof.Mark, StringComparison.Ordinal)))
        {
            findings.Add(ProofFindings.Unmarked(key, proof.Name, proof.Mark));
        }

        return true;
    }

    private const double LeastTold = 0.2; // mm² below which nothing is told of what hangs free

    private static IEnumerable<ProofDraft> Drafts(ProofRequest request, List<Finding> findings)
    {
        var marks = new ProofMarks();
        foreach (var draft in OfPrinter(request))
        {
            yield return draft;
        }

        foreach (double at in request.Spec.At ?? [])
        {
            var faces = request.Platforms.SelectMany(p => p.Faces).ToArray();
            if (!Array.Exists(faces, f => Reaches(f, at)))
            {
                findings.Add(ProofFindings.NowhereBeside(Invariant($"{request.Spec.Key}.at[{request.Spec.At!.ToList().IndexOf(at)}]"), at, faces));
            }
        }

        foreach (var draft in request.Platforms.SelectMany(p => OfPlatform(p, request, marks, findings)))
        {
            yield return draft;
        }
    }

    // What tells of the printer and its fits: the strip and the coupons.
    private static IEnumerable<ProofDraft> OfPrinter(ProofRequest request)
    {
        var (blocks, figures, engraved) = Strip.Made(request.Printer);
        yield return new(ProofGroups.Strip, "", "strip of 100 mm", ProofKind.Strip, blocks)
        {
            Figures = figures,
            Engraved = engraved,
            Use = "Measure over two blocks and between them; half the sum is what 100 mm came out as. "
                + "Along the bed first, then across: strip under [printer] takes both.",
        };
        if (Coupons.OfJoint(request.Cutting.Joint, request.Printer) is { } joint)
        {
            yield return new(ProofGroups.Coupons, "", "coupon of joints", ProofKind.JointCoupon, joint.Blocks)
            {
                Figures = joint.Figures,
                Engraved = joint.Engraved,
                Use = "The first that goes in by hand and does not fall out: dowel under [fits] takes its figure, hundredths of a mm.",
            };
        }

        if (Coupons.OfDeck(request.Platforms.Select(p => p.Sections.Plan), request.Printer) is { } deck)
        {
            yield return new(ProofGroups.Coupons, "", "coupon of holes", ProofKind.HoleCoupon, deck.Blocks)
            {
                Figures = deck.Figures,
                Engraved = deck.Engraved,
                Use = "Try the posts themselves from the side that lay on the bed: "
                    + "the figure of the first that goes in is taken back under [fits], hundredths of a mm, for round holes and for square ones.",
            };
        }
    }

    private static IEnumerable<ProofDraft> OfPlatform(ProofPlatform platform, ProofRequest request, ProofMarks marks, List<Finding> findings)
    {
        string name = platform.Sections.Platform;
        foreach (var face in platform.Faces)
        {
            yield return Slice(platform, face, request, marks.Next("S"));
            foreach (var gauge in Gauges(name, face, request, marks, findings))
            {
                yield return gauge;
            }
        }

        foreach (var board in Boards(platform, request, marks, findings))
        {
            yield return board;
        }

        foreach (var section in platform.Sections.Sections)
        {
            string mark = marks.Next("F");
            yield return new(ProofGroups.Footprints, name, Invariant($"{section.Name}, footprint"), ProofKind.Footprint,
                [.. Footprint.Blocks(platform.Sections, section, request.Spec, request.Printer, request.Cutting.Joint.EndTrim, mark)])
            {
                Mark = mark,
                Engraved = Footprint.Engraved(platform.Sections, section, request.Printer, mark),
                Figures = [new("from chainage", section.From), new("to chainage", section.To), new("thickness", request.Spec.Footprint)],
                ToLayout = RigidTransform.Identity,
                Use = "Lay it beside the track, its edge to the rail, and push every vehicle past. Grooves show where walls stand.",
            };
        }

        foreach (var mask in Masks(platform.Sections, request, marks))
        {
            yield return mask;
        }
    }

    private static IEnumerable<ProofDraft> Masks(SectionSet set, ProofRequest request, ProofMarks marks)
    {
        var bed = new BedShape(request.Printer);
        foreach (var piece in MaskPiece.Of(set, outline => bed.Fits(ConvexRing.Hull(outline))))
        {
            string mark = marks.Next("M");
            var (blocks, figures, engraved) = MaskPrint.Made(piece, mark, request.Spec, request.Printer);
            yield return new(ProofGroups.Masks, set.Platform, Invariant($"{set.Sections[piece.Section - 1].Name}, {piece.Name}"), ProofKind.Mask, blocks)
            {
                Mark = mark,
                Engraved = engraved,
                Figures = figures,
                Use = piece.Slot is null
                    ? "Lay it on the deck, its mark on top, while the coping is painted; weigh it down."
                    : "Lay its slot over the line, its grooves on the section's ends or on those of the stencil before, and dab with an almost dry brush.",
            };
        }
    }

    private static ProofDraft Slice(ProofPlatform platform, ProofFace face, ProofRequest request, string mark)
    {
        var spine = platform.Sections.Plan;
        double middle = face == platform.Faces[0] ? face.Tightest
            : spine.Spine.Locate(face.Plan.ToLayout(face.Tightest, face.Plan.CopingFront.At(face.Tightest)), face.Tightest).Chainage;
        var (blocks, surface, from, to, engraved) = TestSlice.Of(spine, middle, request.Spec.Slice, Invariant($"{mark} {face.Tightest:0}"), request.Printer);
        var along = spine.ToLayout(middle, spine.Back.At(middle)) - spine.ToLayout(middle, spine.CopingFront.At(middle));
        return new(ProofGroups.Gauges, platform.Sections.Platform, Invariant($"{face.Name}, test slice at {face.Tightest:0}"), ProofKind.Slice, blocks)
        {
            Mark = mark,
            Engraved = engraved,
            Figures = [new("chainage of its middle", face.Tightest), new("length along the track", to - from)],
            ToLayout = RigidTransform.Identity,
            Lying = (surface, along),
            Use = "Stand it where it belongs and push every vehicle past, both ways: nothing comes nearer anywhere.",
        };
    }

    private static bool Reaches(ProofFace face, double at) => at >= ProofFindings.First(face) && at <= ProofFindings.Last(face);

    private static IEnumerable<double> Places(ProofFace face, ProofSpec spec)
    {
        if (spec.At is { } stated)
        {
            return stated.Where(at => Reaches(face, at)).Distinct().Order();
        }

        var profile = face.Plan.Profile;
        double first = ProofFindings.First(face), last = ProofFindings.Last(face);
        double Whole(double at) => Math.Clamp(Math.Round(at), Math.Ceiling(first), Math.Floor(last));
        var kept = new List<double>();
        foreach (double at in (double[])[Whole(face.Tightest), Whole(profile.StartHead + BesideHead), Whole(profile.EndHead - BesideHead),
            Whole((profile.StartHead + profile.EndHead) / 2)])
        {
            if (kept.Count < 3 && !kept.Exists(k => Math.Abs(k - at) < Apart))
            {
                kept.Add(at);
            }
        }

        return kept.Order();
    }

    private static IEnumerable<ProofDraft> Gauges(
        string platform, ProofFace face, ProofRequest request, ProofMarks marks, List<Finding> findings)
    {
        foreach (double at in Places(face, request.Spec))
        {
            var place = new GaugePlace(face.Ride, face.Plan, at);
            var gauge = new SlideGauge(place, request.Spec, request.Printer, request.Gauge, request.RailHead);
            string key = request.Spec.Key + ".at";
            if (gauge.Between < ProofFindings.TonguesInNozzles * request.Printer.Nozzle)
            {
                findings.Add(ProofFindings.Jams(key, face.Name, at, gauge.Between, request.Gauge - (2 * request.Spec.Play), request.Printer.Nozzle));
                continue;
            }

            string mark = marks.Next("G");
            var (blocks, figures, room, engraved) = gauge.Made(mark, face.Name);
            if (room is { } narrow)
            {
                findings.Add(ProofFindings.NoFinger(request.Spec.Key + ".sleepers", face.Name, at, narrow));
            }

            yield return new(ProofGroups.Gauges, platform, Invariant($"{face.Name}, slide gauge at {at:0.##}"), ProofKind.SlideGauge, blocks)
            {
                Figures = figures,
                Mark = mark,
                Engraved = engraved,
                ToLayout = gauge.ToLayout,
                Rides = (face.Plan.Spec.Face.Track, at),
                Use = Invariant($"Stand it on both rails at chainage {at:0.##}, square to the track, ")
                    + Invariant($"and push the platform up until the same air shows at coping and wall; ")
                    + Invariant($"a strip {request.Spec.Air:0.##} mm thick just goes between."),
            };
        }
    }

    private static IEnumerable<ProofDraft> Boards(ProofPlatform platform, ProofRequest request, ProofMarks marks, List<Finding> findings)
    {
        foreach (var vehicle in OnBoards(platform, request, findings))
        {
            var board = new ThrowBoard(vehicle, request.Spec, request.Printer, request.Cutting.Joint, request.Gauge, request.RailHead);
            foreach (var (name, kind, blocks, figures, mark, engraved) in board.Pieces(Longest(board.Width, request.Printer), marks.Next("B")))
            {
                yield return new(ProofGroups.Gauges, platform.Sections.Platform, platform.Faces.Count + request.Platforms.Count > 2
                    ? Invariant($"{platform.Sections.Platform}, {name}") : name, kind, blocks)
                {
                    Figures = figures,
                    Mark = mark,
                    Engraved = engraved,
                    Use = kind == ProofKind.ThrowShoe
                        ? "Lies between the rails under a pivot of the board and holds it by a pin, a cut dowel."
                        : "Lay paper over the track, cut out between the rails' outer faces; "
                            + "run the board along and draw through its holes: what is drawn is the reach that is really there. Parts on bogies are not drawn.",
                };
            }
        }
    }

    // Vehicles that get a board: those that were asked for, or else those that decide where an edge lies.
    private static List<Vehicle> OnBoards(ProofPlatform platform, ProofRequest request, List<Finding> findings)
    {
        var vehicles = platform.Faces.SelectMany(f => f.Vehicles).DistinctBy(v => v.Name).ToArray();
        var asked = new List<Vehicle>();
        for (int i = 0; i < (request.Spec.Vehicles?.Count ?? 0); i++)
        {
            string name = request.Spec.Vehicles![i];
            if (Array.Find(vehicles, v => v.Name == name) is not { } vehicle)
            {
                continue; // it runs past another platform
            }

            if (ThrowBoard.Objection(vehicle) is { } why)
            {
                findings.Add(ProofFindings.NoBoard(Invariant($"{request.Spec.Key}.throw_boards[{i}]"), name, why, vehicle.TruckOf));
                continue;
            }

            asked.Add(vehicle);
        }

        if (request.Spec.Vehicles is null)
        {
            // A truck is shown by its engine.
            string Carrier(string name) => Array.Find(vehicles, v => v.Name == name)?.TruckOf ?? name;
            asked.AddRange(platform.Faces.Select(f => Array.Find(vehicles, v => v.Name == Carrier(f.Governing))).OfType<Vehicle>().Where(v =>
                ThrowBoard.Objection(v) is null).Distinct());
        }

        return asked;
    }

    // The longest oblong of a width that the bed takes.
    private static double Longest(double width, PrinterSpec printer)
    {
        var bed = new BedShape(printer);
        double fits = 0, not = 2 * (printer.Bed.Max(p => p.Length) + printer.Bed.Max(p => p.Length));
        while (not - fits > 0.1)
        {
            double middle = (fits + not) / 2;
            (fits, not) = bed.Fits(Shape.Box(0, 0, middle, width)) ? (middle, not) : (fits, middle);
        }

        return fits;
    }

    private static List<ProofPlate> Plates(List<Proof> proofs, PrinterSpec printer)
    {
        var plates = new List<ProofPlate>();
        foreach (var group in proofs.GroupBy(p => (p.Platform, p.Group)))
        {
            Proof[] own = [.. group];
            var beds = PlatePacker.Pack([.. own.Select((p, i) => new PieceToPack(p.Hull, p.Size.X, i, p.Estimate.Volume))], printer,
                group.Key.Group == ProofGroups.Strip ? 1 : PlatePacker.Turns);
            plates.AddRange(beds.Select((bed, i) => new ProofPlate(
                group.Key.Platform, group.Key.Group, i + 1, [.. bed.OrderBy(p => p.Piece).Select(p => Corrected(own[p.Piece], p.ToBed, printer.Stretch))],
                    PrintEstimate.Sum(bed.Select(p => own[p.Piece].Estimate), printer))));
        }

        return plates;
    }

    // What the printer gets wrong is taken in as the piece lies on its bed; without that a piece keeps its turn.
    private static PlacedProof Corrected(Proof proof, RigidTransform toBed, Point2 by)
    {
        if (by == new Point2(1, 1))
        {
            return new(proof, toBed);
        }

        var (turn, corner) = BedCorrection.AsItLies(proof.Hull, toBed);
        Point2[] hull = [.. proof.Hull.Select(p => turn.Apply(new(p.X, p.Y, 0))).Select(p => new Point2(p.X, p.Y))];
        return new(
            proof with
            {
                FromFile = turn.Inverse().Then(proof.FromFile),
                Hull = hull,
                Size = new(hull.Max(p => p.X), hull.Max(p => p.Y), proof.Size.Z),
                Stretch = by
            },
            RigidTransform.Shift(corner.X * by.X, corner.Y * by.Y, 0));
    }
}
