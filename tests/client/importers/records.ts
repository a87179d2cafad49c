/** Records of the invented museum in the open formats. */

export const LIDO = `<?xml version="1.0" encoding="UTF-8"?>
<lido:lidoWrap xmlns:lido="http://www.lido-schema.org">
<lido:lido><lido:lidoRecID lido:type="local">om-1</lido:lidoRecID>
<lido:descriptiveMetadata xml:lang="en"><lido:objectIdentificationWrap>
<lido:titleWrap><lido:titleSet><lido:appellationValue>River map of the lower weir</lido:appellationValue></lido:titleSet></lido:titleWrap>
<lido:repositoryWrap><lido:repositorySet><lido:workID>1902.7.1</lido:workID></lido:repositorySet></lido:repositoryWrap>
<lido:objectMeasurementsWrap><lido:objectMeasurementsSet><lido:displayObjectMeasurements>40 x 60 cm</lido:displayObjectMeasurements></lido:objectMeasurementsSet></lido:objectMeasurementsWrap>
</lido:objectIdentificationWrap></lido:descriptiveMetadata></lido:lido>
</lido:lidoWrap>`;

export const MANIFEST = JSON.stringify({
  '@context': 'http://iiif.io/api/presentation/3/context.json',
  id: 'https://overwick.example/map/manifest.json',
  type: 'Manifest',
  label: { en: ['River map of the lower weir'] },
  metadata: [{ label: { en: ['Object number'] }, value: { none: ['1902.7.1'] } }],
  items: [
    {
      id: 'https://overwick.example/map/canvas',
      type: 'Canvas',
      width: 900,
      height: 600,
      items: [
        {
          type: 'AnnotationPage',
          items: [
            {
              type: 'Annotation',
              motivation: 'painting',
              body: { id: 'https://overwick.example/map.jpg', type: 'Image', width: 900, height: 600 },
            },
          ],
        },
      ],
    },
  ],
});
