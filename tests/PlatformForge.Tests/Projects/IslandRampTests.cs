using PlatformForge.Exports.Files;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Projects;

/// <summary>Ramps of an island's second face told apart from the first one's: a length or a foot of its own, and what a plane from edge to edge does not
/// allow.</summary>
public class IslandRampTests
{
    // The down track runs the other way: its start lies at the end of the up track's chainage.
    private const string AtDownStart = "other_face.ramps.start.";

    private static Outcome<Dossier> Design(params string[] sets)
    {
        var read = Samples.Read(PresetShelf.Sample("thornhithe")!, [.. sets.Select(s => "platform[0]." + s)]);
        return read.Value is { } project ? DesignRun.Design(project, RunWatch.None) : Outcome.Fault<Dossier>(read.Findings);
    }

    private static double Even => Design().Value!.Platforms[0].Plan.Faces[1].Profile is var p ? p.StartHead - p.From : 0;

    [Theory]
    [InlineData(1.1)]
    [InlineData(0.85)]
    public void A_second_face_has_a_ramp_of_its_own_length_on_one_plane_from_edge_to_edge(double share)
    {
        double length = Math.Round(Even * share, 1);
        var dossier = Design(FormattableString.Invariant($"{AtDownStart}length={length}")).Value!;
        var plan = dossier.Platforms[0].Plan;
        var (near, far) = (plan.Faces[0], plan.Faces[1]);
        Assert.Equal(length, far.Profile.StartHead - far.Profile.From, 1e-6);
        Assert.Equal(96, near.Profile.To - near.Profile.EndHead, 1e-6);

        // Both heads lie at the full height on the ramp's own plane, and both feet where the profiles tell them.
        var ramp = plan.Surface.Planes[^1];
        double At(FacePlan face, double s) => ramp.At(face.ToLayout(s, face.CopingFront.At(s)));
        Assert.Equal(plan.Profile.Level, At(near, near.Profile.EndHead), 1e-6);
        Assert.Equal(plan.Profile.Level, At(far, far.Profile.StartHead), 1e-3);
        Assert.Equal(near.Profile.EndFoot, At(near, near.Profile.To), 1e-6);
        Assert.Equal(far.Profile.StartFoot, At(far, far.Profile.From), 1e-3);

        // The other end is as it was.
        Assert.Equal(Design().Value!.Platforms[0].Plan.Faces[1].Profile.EndHead, far.Profile.EndHead, 1e-6);
        var verdict = TrialVerdict.Of(dossier);
        Assert.DoesNotContain(verdict.Findings, f => f.Severity == Severity.Error);
        Assert.All(verdict.Vehicles, v => Assert.InRange(v.Tightest!.Clearance, 0, double.PositiveInfinity));
    }

    [Fact]
    public void A_foot_of_its_own_gives_the_length_and_that_length_gives_the_foot()
    {
        var plan = Design(AtDownStart + "foot=1.2").Value!.Platforms[0].Plan;
        var profile = plan.Faces[1].Profile;
        Assert.Equal(1.2, profile.StartFoot - 8, 0.01);
        double length = profile.StartHead - profile.From;
        var again = Design(FormattableString.Invariant($"{AtDownStart}length={length}")).Value!.Platforms[0].Plan.Faces[1].Profile;
        Assert.Equal(profile.StartFoot, again.StartFoot, 1e-3);
    }

    /// <summary>A length and the foot that it gives are one and the same, stated twice.</summary>
    [Fact]
    public void A_length_and_the_foot_that_goes_with_it_may_both_be_stated()
    {
        string length = FormattableString.Invariant($"{AtDownStart}length={Math.Round(Even, 1)}");
        double foot = Design(length).Value!.Platforms[0].Plan.Faces[1].Profile.StartFoot - 8;
        Assert.NotNull(Design(length, FormattableString.Invariant($"{AtDownStart}foot={foot}")).Value);
    }

    /// <summary>Where a gradient of its own is refused, the one that the ramp has is told: its run for a millimetre of its rise.</summary>
    [Fact]
    public void The_gradient_that_a_second_ramp_has_is_told()
    {
        var profile = Design().Value!.Platforms[0].Plan.Faces[1].Profile;
        double gradient = (profile.StartHead - profile.From) / (profile.Level - profile.StartFoot);
        string told = Assert.Single(Design(AtDownStart + "gradient=8").Findings, f => f.Code == "PF4145").Message;
        double figure = double.Parse(System.Text.RegularExpressions.Regex.Match(told, @"1 in ([0-9]+\.[0-9]+)").Groups[1].Value,
            System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(gradient, figure, 0.006);
    }

    [Theory]
    [InlineData("PF4145", "gradient=8")]
    [InlineData("PF4146", "length=100", "foot=4")]
    [InlineData("PF4147", "length=170")]
    [InlineData("PF4147", "length=20")]
    [InlineData("PF4149", "length=126")]
    [InlineData("PF4149", "foot=-7")]
    public void What_a_plane_from_edge_to_edge_does_not_allow_is_told_and_mended_by_the_cure(string code, params string[] keys)
    {
        string[] sets = [.. keys.Select(k => AtDownStart + k)];
        var finding = Assert.Single(Design(sets).Findings, f => f.Severity == Severity.Error);
        Assert.Equal(code, finding.Code);
        Assert.StartsWith("platform[0].other_face.ramps.start.", finding.Key, StringComparison.Ordinal);
        string key = finding.Key["platform[0].".Length..];
        string[] mended = [.. sets.Where(s => !s.StartsWith(key + "=", StringComparison.Ordinal)),
            .. finding.Cure!.Act == CureAct.Set ? [FormattableString.Invariant($"{key}={finding.Cure.Value}")] : (string[])[]];
        Assert.NotNull(Design(mended).Value);
    }

    [Fact]
    public void A_ramp_of_one_face_alone_is_refused()
    {
        string text = PresetShelf.Sample("thornhithe")!.Replace(", end = { gradient = 8 } }", " }", StringComparison.Ordinal);
        var read = Samples.Read(text, ["platform[0]." + AtDownStart + "length=96"]);
        var finding = Assert.Single(DesignRun.Design(read.Value!, RunWatch.None).Findings, f => f.Severity == Severity.Error);
        Assert.Equal("PF4144", finding.Code);
    }

    [Fact]
    public void Lines_across_leave_both_tracks_at_one_angle_and_cuts_run_along_them()
    {
        var platform = Design().Value!.Platforms[0];
        var plan = platform.Plan;
        var (near, far, across) = (plan.Faces[0], plan.Faces[1], plan.Body.Across!);
        for (int i = 0; i < across.Stations.Length; i += 7)
        {
            // Told at a usual reach, from which the edges differ by some millimetres.
            Point2 one = near.Chart.At(across.Stations[i]).Tangent, two = far.Chart.At(across.Second[i]).Tangent, away = across.Aways[i];
            Assert.InRange(Math.Abs(Math.Abs(Point2.Dot(one, away)) - Math.Abs(Point2.Dot(two, away))), 0, 0.01);
        }

        // The middle between both edges is met squarely by every cut.
        Assert.NotEmpty(platform.Sections.Cuts);
        Assert.All(platform.Sections.Cuts, c =>
        {
            Point2 Middle(double s) => plan.ToLayout(s, (plan.CopingFront.At(s) + plan.Back.At(s)) / 2);
            var along = Middle(c + 3) - Middle(c - 3);
            var cut = plan.ToLayout(c, plan.Back.At(c)) - plan.ToLayout(c, plan.CopingFront.At(c));
            Assert.InRange(Math.Abs(Point2.Dot(along, cut)) / along.Length / cut.Length, 0, 0.02);
        });

        // A rib along runs beside the middle of the hollow, as far off it everywhere as it stepped aside for what stands in it.
        var rib = Assert.Single(plan.Ribs, r => r.Kind == RibKind.Longitudinal);
        double Aside(double s) => (rib.Near.At(s) + rib.Far.At(s) - plan.WallBack.At(s) - plan.BackWallFace.At(s)) / 2;
        Assert.InRange(Math.Abs(Aside(plan.Stations[0])), 0, 3);
        Assert.All(plan.Stations, s => Assert.Equal(Aside(plan.Stations[0]), Aside(s), 1e-9));
    }
}
