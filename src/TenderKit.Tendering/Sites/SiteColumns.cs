using System.Collections.Immutable;
using TenderKit.Intake.Numbers;
using TenderKit.Tendering.Columns;

namespace TenderKit.Tendering.Sites;

/// <summary>Columns a site list may have, with their headings in English, French, Spanish and Portuguese.</summary>
public static class SiteColumns
{
    public const string Id = "id";
    public const string Name = "name";
    public const string Latitude = "latitude";
    public const string Longitude = "longitude";
    public const string Coordinates = "coordinates";
    public const string Kind = "kind";
    public const string Length = "length";
    public const string Width = "width";
    public const string LightClass = "light_class";
    public const string AverageLux = "average_lux";
    public const string MinimumLux = "minimum_lux";
    public const string Uniformity = "uniformity";
    public const string Schedule = "schedule";
    public const string Poles = "poles";
    public const string Arrangement = "arrangement";
    public const string Shading = "shading";
    public const string Horizon = "horizon";
    public const string Azimuth = "azimuth";
    public const string MountingHeight = "mounting_height";
    public const string Wind = "wind";
    public const string Terrain = "terrain";
    public const string Soil = "soil";
    public const string WindDefinition = "wind_definition";
    public const string Traffic = "traffic_km_per_h";
    public const string Coast = "coast_km";
    public const string Corrosion = "corrosion";
    public const string SoilLateral = "soil_kpa_per_m";
    public const string SoilBearing = "soil_bearing_kpa";
    public const string Flood = "flood";
    public const string Surveyed = "surveyed";
    public const string Lot = "lot";
    public const string ClimateFile = "climate_file";
    public const string Remark = "remark";
    public const string District = "district";
    public const string Easting = "easting";
    public const string Northing = "northing";
    public const string UtmZone = "utm_zone";

    /// <summary>Side of a single row of poles, seen along the line.</summary>
    public const string Side = "side";

    /// <summary>A line walked on the ground, as survey forms write it.</summary>
    public const string Trace = "trace";

    /// <summary>An area walked round on the ground.</summary>
    public const string Outline = "outline";

    /// <summary>Direction of the road.</summary>
    public const string Bearing = "bearing_deg";

    /// <summary>Known so that it is not taken for a latitude; not used.</summary>
    public const string Altitude = "altitude";

    /// <summary>Of a position; not used.</summary>
    public const string Accuracy = "accuracy";

    public static readonly ImmutableArray<ColumnMeaning> All =
    [
        ColumnMeaning.Of(Id, null,
            "site id|id|no|no.|nr|number|site|site no|site number|site code|code|ref|reference|item|item no|s no|sl no|"
            + "serial number|n|numero|n°|no du site|code du site|num|ordre|no de sitio|codigo|codigo del sitio|item numero|"
            + "num sitio|codigo do local"),
        ColumnMeaning.Of(Name, null,
            "site name|name|location|place|village|street name|road name|name of road|name of site|name of street|description|"
            + "nom|nom du site|lieu|localite|designation|nombre|nombre del sitio|lugar|ubicacion|localidad|descripcion|nome|"
            + "nome do local|local|localidade|descricao|nom de la rue|nombre de la calle|nome da rua"),
        ColumnMeaning.Of(Latitude, QuantityKind.Degrees, "latitude|lat|latitud|latitude gps|latitud gps|gps latitude|gps lat|y|lat dd|decimal latitude"),
        ColumnMeaning.Of(Longitude, QuantityKind.Degrees,
            "longitude|lon|long|lng|longitud|longitude gps|longitud gps|gps longitude|gps long|gps lon|x|long dd|decimal longitude"),
        ColumnMeaning.Of(Coordinates, null,
            "coordinates|gps|gps coordinates|geopoint|gps location|location gps|gps point|gps position|point gps|coordinate|coords|lat lng|lat long|lat lon|latitude longitude|position|coordonnees|coordonnees gps|"
            + "coordenadas|coordenadas gps"),
        ColumnMeaning.Of(Kind, null,
            "kind|type|site type|type of site|kind of site|category|use|kind of place|type de site|genre|categorie|tipo|"
            + "tipo de sitio|categoria|tipo de local"),
        ColumnMeaning.Of(Length, QuantityKind.Length,
            "length|longitud|road length|site length|length of road|length of site|total length|longueur|longueur de la route|"
            + "lineaire|longitud de la via|longitud del tramo|largo|longitud calle|comprimento|extensao|long side"),
        ColumnMeaning.Of(Width, QuantityKind.Length,
            "width|road width|site width|width of road|carriageway width|lit width|breadth|largeur|largeur de la route|"
            + "largeur chaussee|ancho|anchura|ancho de la via|ancho calle|largura|largura da via|short side"),
        ColumnMeaning.Of(LightClass, null,
            "class|lighting class|light class|illumination class|classe|classe d eclairage|classe eclairage|clase|"
            + "clase de alumbrado|clase de iluminacion|classe de iluminacao"),
        ColumnMeaning.Of(AverageLux, QuantityKind.Illuminance,
            "average lux|average illuminance|average|lux|lux average|mean lux|eav|e av|em|average maintained illuminance|"
            + "illuminance|required lux|eclairement moyen|eclairement|lux moyen|iluminancia media|iluminacion media|lux promedio|"
            + "lux medio|iluminancia"),
        ColumnMeaning.Of(MinimumLux, QuantityKind.Illuminance,
            "minimum lux|minimum illuminance|lux minimum|emin|e min|min lux|least lux|eclairement minimum|eclairement minimal|"
            + "lux minimal|iluminancia minima|lux minimo|lux minima"),
        ColumnMeaning.Of(Uniformity, QuantityKind.Fraction, "uniformity|overall uniformity|uo|u0|uniformite|uniformidad|uniformidade"),
        ColumnMeaning.Of(Schedule, null,
            "schedule|lighting schedule|profile|operating schedule|lighting profile|burning schedule|horaire|programme|profil|"
            + "programme d eclairage|horario|programa|perfil"),
        ColumnMeaning.Of(Poles, QuantityKind.Count,
            "poles|number of poles|no of poles|pole count|nos of poles|qty poles|lights|number of lights|no of lights|"
            + "number of lamps|nombre de poteaux|poteaux|nombre de mats|mats|nombre de lampadaires|lampadaires|postes|"
            + "numero de postes|cantidad de postes|numero de luminarias|quantidade de postes"),
        ColumnMeaning.Of(Arrangement, null,
            "arrangement|pole arrangement|layout|disposition|implantation|disposicion|disposicao|arranjo|sides"),
        ColumnMeaning.Of(Shading, QuantityKind.Fraction,
            "shading|shade|shaded|shading loss|shadow|shading fraction|ombrage|ombre|masque|sombra|sombreado|sombreamento"),
        ColumnMeaning.Of(Horizon, null, "horizon|horizon profile|skyline|horizonte|perfil del horizonte|profil d horizon"),
        ColumnMeaning.Of(Azimuth, QuantityKind.Degrees, "azimuth|azimuth deg|module azimuth|azimut|acimut|azimute"),
        ColumnMeaning.Of(MountingHeight, QuantityKind.Length,
            "mounting height|height|pole height|lamp height|light point height|hauteur|hauteur de feu|hauteur du mat|"
            + "hauteur de montage|altura|altura de montaje|altura del poste|altura de montagem|altura do poste"),
        ColumnMeaning.Of(Wind, QuantityKind.Speed,
            "wind|wind speed|basic wind speed|design wind speed|basic wind|vent|vitesse du vent|vitesse de vent|viento|"
            + "velocidad del viento|vento|velocidade do vento"),
        ColumnMeaning.Of(Terrain, null,
            "terrain|terrain category|exposure|categorie de terrain|rugosite|terreno|categoria de terreno|categoria de terreno"),
        ColumnMeaning.Of(Soil, null,
            "soil|soil class|soil type|ground|sol|type de sol|classe de sol|suelo|tipo de suelo|solo|tipo de solo"),
        ColumnMeaning.Of(WindDefinition, null, "wind definition|definition of wind|definition of wind speed|wind averaging|definition du vent|definicion del viento|definicao do vento"),
        ColumnMeaning.Of(Traffic, null, "traffic km h|traffic speed|traffic speed km h|traffic km per h|speed limit|speed limit km h|vitesse du trafic|vitesse limite|velocidad del trafico|limite de velocidad|velocidade do trafego|limite de velocidade"),
        ColumnMeaning.Of(Coast, null, "coast km|distance to coast|distance to coast km|distance to sea|distance to sea km|distance a la mer|distancia al mar|distancia ao mar"),
        ColumnMeaning.Of(Corrosion, null, "corrosion|corrosion category|corrosivity|corrosivity category|corrosivite|categorie de corrosivite|corrosividad|categoria de corrosividad|corrosividade|categoria de corrosividade"),
        ColumnMeaning.Of(SoilLateral, null, "soil kpa per m|soil kpa m|lateral bearing|lateral bearing kpa m|lateral soil bearing|lateral soil bearing kpa m"),
        ColumnMeaning.Of(SoilBearing, null, "soil bearing kpa|bearing capacity|bearing capacity kpa|soil bearing|allowable bearing|allowable bearing kpa|portance|portance kpa|capacidad portante|capacidade de carga do solo"),
        ColumnMeaning.Of(Flood, null, "flood|flood prone|floods|flooding|inondable|inondation|inundable|inundacion|inundavel|inundacao"),
        ColumnMeaning.Of(Surveyed, null, "surveyed|surveyed on|date surveyed|date of survey|survey date|site surveyed|releve|releve le|date du releve|relevado|fecha de relevamiento|levantado|data do levantamento"),
        ColumnMeaning.Of(Lot, null, "lot|lot no|lot number|package|lote|no de lote|lot numero|tranche"),
        ColumnMeaning.Of(ClimateFile, null,
            "climate file|climate|weather file|fichier climat|fichier climatique|archivo de clima|archivo climatico|"
            + "ficheiro de clima|arquivo climatico"),
        ColumnMeaning.Of(Remark, null,
            "remark|remarks|note|notes|comment|comments|observation|remarque|remarques|observations|commentaire|commentaires|"
            + "observacion|observaciones|nota|notas|comentario|observacao|observacoes"),
        ColumnMeaning.Of(District, null,
            "district|ward|commune|municipality|region|province|county|sub county|zone administrative|arrondissement|departement|"
            + "cercle|municipio|distrito|provincia|departamento|barrio|bairro|sector|secteur|constituency|parish"),
        ColumnMeaning.Of(Easting, QuantityKind.Length, "easting|eastings|utm e|utm x|utm easting|x utm|coord x|coordonnee x|coordenada x|este utm|gps easting|x m"),
        ColumnMeaning.Of(Northing, QuantityKind.Length, "northing|northings|utm n|utm y|utm northing|y utm|coord y|coordonnee y|coordenada y|norte utm|gps northing|y m"),
        ColumnMeaning.Of(Altitude, QuantityKind.Length, "altitude|alt|elevation|gps altitude|gps elevation|altitud|elevacion|altitude gps|cota|masl"),
        ColumnMeaning.Of(Accuracy, QuantityKind.Length, "accuracy|precision|gps accuracy|gps precision|hdop|precisao|exactitud"),
        ColumnMeaning.Of(Bearing, QuantityKind.Degrees, "bearing deg|road bearing|bearing of road|direction of road|road direction|road heading|bearing degrees|road bearing deg|orientation de la route|direction de la route|rumbo de la via|orientacion de la via|rumo da via|orientacao da via"),
        ColumnMeaning.Of(Side, null, "side of road|side of the road|pole side|side of poles|cote de la route|cote des poteaux|lado de la via|lado de los postes|lado da via|lado dos postes"),
        ColumnMeaning.Of(Trace, null, "trace|geotrace|road trace|gps trace|line trace|trace of road|centre line|centerline|trace gps|trace de la route|trazado|trazado gps|tracado"),
        ColumnMeaning.Of(Outline, null, "outline|geoshape|polygon|area outline|area drawn|boundary|site boundary|shape|polygone|contour|perimetre|poligono|contorno|perimetro"),
        ColumnMeaning.Of(UtmZone, null, "utm zone|zone|zone utm|fuseau|huso|fuso|zona utm|grid zone"),
    ];
}
