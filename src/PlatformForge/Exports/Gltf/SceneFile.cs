using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Looks;
using PlatformForge.Exports.Pictures;
using PlatformForge.Exports.Pictures.Bodies;
using static System.FormattableString;

namespace PlatformForge.Exports.Gltf;

/// <summary>
/// The finished layout for viewers, to be turned about and shown round: each section and each printed line under its platform, in the colours of the
/// pictures; and apart from them, so that it can be hidden, what is not printed: track, vehicles, what stands on the platforms.
/// </summary>
internal static class SceneFile
{
    /// <summary>Name of the file.</summary>
    public const string Name = "scene.glb";

    private const string NotPrinted = "not printed";

    private static readonly IReadOnlyList<Rgb> Paints = [.. Palette.Materials.Select(m => m.Colour)];

    /// <summary>The file, where it is wanted.</summary>
    public static IReadOnlyList<FileWork> Work(Dossier dossier, OutputChoice choice) =>
        choice.Scene ? [new(Name, (Stream to) => Write(to, dossier, choice.Furnished))] : [];

    /// <summary>Writes it.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="dossier">Everything known.</param>
    /// <param name="furnished">Whether vehicles and what stands on platforms are shown.</param>
    public static void Write(Stream to, Dossier dossier, bool furnished) =>
        GlbWriter.Write(to, Of(dossier, furnished), $"PlatformForge {dossier.Version}", new Dictionary<string, string>
        {
            ["project"] = dossier.Project,
            ["scale"] = Invariant($"1:{Figures.Short(dossier.Scale.Ratio)}"),
            ["units"] = "One unit of the file is a metre of the model; nodes below the root are told in mm.",
            ["use"] = "For looking at a model, not for printing and never for a full-size railway.",
        });

    /// <summary>What there is to see.</summary>
    /// <inheritdoc cref="Write" path="/param"/>
    public static SceneNode Of(Dossier dossier, bool furnished) => SceneNode.Group(
        dossier.Project,
        [.. dossier.Platforms.Select(Platform), SceneNode.Group(NotPrinted, [Tracks(dossier), .. furnished ? Furniture(dossier) : []])]);

    private static SceneNode Platform(PlatformDossier platform)
    {
        var set = platform.Sections;
        return SceneNode.Group(
            platform.Name,
            [
                .. set.Sections.Select(s => SceneNode.Leaf(s.Name, [new SceneBody(s.Solid.Mesh, Paints)])),
                .. set.Lines.Pieces.Select(p => SceneNode.Leaf(p.Name(set.Sections[p.Section - 1]), [new SceneBody(p.Solid.Mesh, Paints)])),
            ]);
    }

    private static SceneNode Tracks(Dossier dossier) => SceneNode.Group("track", dossier.Tracks.Select(t => SceneNode.Leaf(
        t.Ride.Name, TrackBodies.Of(t.Ride, 0, t.Ride.Length, dossier.Scale.Ratio, dossier.Gauge, dossier.RailTopOf(t.Ride.Name)))));

    // Beside several platforms on one track a train stands at the first of them alone, so that none stands in another.
    private static IEnumerable<SceneNode> Furniture(Dossier dossier)
    {
        var trains = new Dictionary<string, IReadOnlyList<SceneBody>>(StringComparer.Ordinal);
        foreach (var (track, bodies) in dossier.Platforms.SelectMany(p => new Stage(dossier, p).Trains()))
        {
            trains.TryAdd(track, bodies);
        }

        yield return SceneNode.Group("vehicles", trains.Select(t => SceneNode.Leaf(t.Key, t.Value)));
        yield return SceneNode.Group("furniture", dossier.Platforms.Select(p => SceneNode.Leaf(p.Name, new Furnishing(p.Plan).Bodies())));
    }
}
