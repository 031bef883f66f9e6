using PlatformForge.Exports.Files;
using PlatformForge.Exports.Looks;
using PlatformForge.Exports.Pictures.Bodies;
using PlatformForge.Geometry;
using PlatformForge.Sections.Forms;
using PlatformForge.Track;

namespace PlatformForge.Exports.Pictures;

/// <summary>The pictures of a platform. Same dossier, same pixels, for any number of threads.</summary>
public static class PlatformPictures
{
    /// <summary>Width of a picture in pixels where nothing else is said.</summary>
    public const int UsualWidth = 1600;

    // The eye of the picture from below is turned this far from square to the platform's chord, and looks up this steeply.
    private const double EyeTurn = 0.0;
    private const double EyeDepth = -1.5; // nearly straight from below, so that no rib hides what is engraved between them

    private static readonly IReadOnlyList<Rgb> Paints = [.. Palette.Materials.Select(m => m.Colour)];

    /// <summary>
    /// The finished platform as someone beside the track sees it who looks along it, with every track there is and, where wanted, fence, boards and vehicles
    /// at the
    /// edge, which are shown and not printed.
    /// </summary>
    /// <param name="dossier">Everything known.</param>
    /// <param name="platform">The platform.</param>
    /// <param name="width">Width in pixels.</param>
    /// <param name="threads">Most threads.</param>
    /// <param name="furnished">Whether what is not printed is shown.</param>
    public static PixelImage Finished(Dossier dossier, PlatformDossier platform, int width = UsualWidth, int threads = -1, bool furnished = true)
    {
        var stage = new Stage(dossier, platform);
        var bodies = platform.Sections.Sections.Select(s => new SceneBody(s.Solid.Mesh, Paints))
            .Concat(platform.Sections.Lines.Pieces.Select(p => new SceneBody(p.Solid.Mesh, Paints)))
            .Concat(stage.Tracks())
            .Concat(RampPaths.Of(platform.Sections.Plan))
            .Concat(furnished ? new Furnishing(platform.Plan).Bodies().Concat(stage.Vehicles()) : [])
            .ToArray();
        var (chord, away) = Axes(platform);
        var (eye, toward) = stage.Eye(chord, away);
        var scene = new Scene(bodies, toward, Point3.Cross(new(0, 0, 1), toward), Sun(chord, away), 0)
        {
            Eye = eye,
            Framed = stage.Framed(),
            LeastAspect = 0.34,
            MostAspect = 0.44,
            Margin = 0.025
        };
        return PictureMaker.Draw(scene, width, threads);
    }

    /// <summary>A stretch of the front from near by, as it is printed: what the wall, its coping and the deck are made of.</summary>
    /// <param name="platform">The platform; one that <see cref="TellsFromNear"/>.</param>
    /// <param name="width">Width in pixels.</param>
    /// <param name="threads">Most threads.</param>
    public static PixelImage FromNear(PlatformDossier platform, int width = UsualWidth, int threads = -1)
    {
        var bodies = platform.Sections.Sections.Select(s => new SceneBody(s.Solid.Mesh, Paints))
            .Concat(platform.Sections.Lines.Pieces.Select(p => new SceneBody(p.Solid.Mesh, Paints)))
            .ToArray();
        var (chord, away) = Axes(platform);
        var right = Point3.Cross(away, new(0, 0, 1));
        var near = new CloseUp(platform.Plan with { Fittings = platform.Sections.Plan.Fittings });
        var (eye, toward, framed) = near.View();

        // The sun stands before the wall, low enough to lie in its joints.
        var sun = (away * -0.55) - (right * 0.75) + new Point3(0, 0, 0.65);
        var scene = new Scene(bodies, toward, Point3.Cross(new(0, 0, 1), toward), sun, 0)
        {
            Eye = eye,
            Framed = framed,
            Shaded = near.Seen(),
            LeastAspect = 0.46,
            MostAspect = 0.5,
            Margin = 0,
            Fades = false
        };
        return PictureMaker.Draw(scene, width, threads);
    }

    /// <summary>Whether a picture from near by shows more than smooth walls.</summary>
    public static bool TellsFromNear(PlatformDossier platform) => CloseUp.Tells(platform.Plan);

    /// <summary>The sections drawn apart and seen from below, with ribs, bores and numbers.</summary>
    public static PixelImage FromBelow(PlatformDossier platform, int width = UsualWidth, int threads = -1)
    {
        var (chord, away) = Axes(platform);
        var sections = platform.Sections.Sections;
        double gap = 0.12 * sections.Average(s => s.Length);
        var bodies = sections
            .Select((s, i) => new SceneBody(s.Solid.Mesh.Moved(Shift(chord * (gap * (i - ((sections.Count - 1) / 2.0))))), Paints))
            .ToArray();
        var (toward, level) = Eye(chord, away, EyeDepth);

        // The light comes from near the eye, so that what is engraved in the bays lies in the light.
        return PictureMaker.Draw(new(bodies, toward, level, toward + (chord * 0.22) - (away * 0.18), null) { LeastAspect = 0.2 }, width, threads);
    }

    /// <summary>A plate's sections as they lie on the bed.</summary>
    public static PixelImage OnBed(Plate plate, int width = 512,
        int threads = -1) => OnBed(plate.Sections.Select(p => p.Section.WrittenMesh().Moved(p.ToBed)), width, threads);

    /// <summary>Prints as they lie on the bed.</summary>
    /// <param name="meshes">Their meshes in the bed's coordinates.</param>
    /// <param name="width">Width in pixels.</param>
    /// <param name="threads">Most threads.</param>
    public static PixelImage OnBed(IEnumerable<Mesh> meshes, int width = 512, int threads = -1)
    {
        var bodies = meshes.Select(m => new SceneBody(m, Paints)).ToArray();
        var scene = new Scene(bodies, new(-0.45, -0.75, 0.85), new(1, 0, 0), new(-0.7, -0.35, 0.9), 0) { LeastAspect = 0.75, MostAspect = 0.75, Margin = 0.07 };
        return PictureMaker.Draw(scene, width, threads);
    }

    /// <summary>Direction from the platform's start to its end, and square to it, from the track towards the platform.</summary>
    private static (Point3 Chord, Point3 Away) Axes(PlatformDossier platform)
    {
        var plan = platform.Plan;
        var (from, to) = (plan.Spec.Face.From, plan.Spec.Face.To);
        var join = plan.ToLayout(to, plan.CopingFront.At(to)) - plan.ToLayout(from, plan.CopingFront.At(from));
        var chord = join * (1 / join.Length);
        var away = plan.Side.Outward(chord);
        return (new(chord.X, chord.Y, 0), new(away.X, away.Y, 0));
    }

    private static (Point3 Toward, Point3 Level) Eye(Point3 chord, Point3 away, double height)
    {
        // Seen from the track's side, the chord runs to the right when the platform is on the left of it.
        var right = Point3.Cross(away, new(0, 0, 1));
        var turned = (away * (-Math.Cos(EyeTurn))) + (right * -Math.Sin(EyeTurn));
        var flat = turned * Math.Cos(height);
        var toward = new Point3(flat.X, flat.Y, Math.Sin(height));
        return (toward, Point3.Cross(new(0, 0, 1), turned));
    }

    private static Point3 Sun(Point3 chord, Point3 away)
    {
        var right = Point3.Cross(away, new(0, 0, 1));
        return (away * -0.32) + (right * -0.8) + new Point3(0, 0, 0.75);
    }

    private static RigidTransform Shift(Point3 by) => RigidTransform.Shift(by.X, by.Y, by.Z);
}
